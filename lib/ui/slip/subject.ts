import { boxInTop } from '#lib/capture/frames.ts';
import { DRAWN } from '#lib/capture/maths/drawing-reader.ts';
import { pictureAt, picturePlaces } from '#lib/capture/pictures/places.ts';
import { pictureSpotter } from '#lib/capture/pictures/spot.ts';
import { type Capture, readSelection } from '#lib/capture/read-selection.ts';
import type { MessageData, SlipState } from '#lib/model/message.ts';
import { type ErrorName, StudentError } from '#lib/model/student-error.ts';
import type { Wish } from '#lib/model/wish.ts';
import { takeSubject } from '../frame/left-subject.ts';
import { send } from '../send.ts';
import type { Box } from './place.ts';
import { withPictures } from './with-pictures.ts';

type Kept = MessageData<'keepClip'>;

/** What a subject may ask of the slip it stands in. */
export interface SlipTools {
  state: SlipState;
  /** Takes the slip away. */
  leave(): void;
  /** Shows the passage anew, after it was changed. */
  refresh(): void;
}

/** What a slip is about: what will be kept, and where in the window it stands. It is read again when it is kept. */
export interface Subject extends Pick<
  Kept,
  'passage' | 'headings' | 'selectors' | 'pictures' | 'page' | 'framed'
> {
  /** Where it was selected, if it was: it may be widened. */
  selected?: { doc: Document; range: Range };
  /** Where it is now, in CSS pixels of the window: the slip stands beside it. */
  place(): Box;
  /** Puts more fields under the passage, into an element of the slip. */
  more?(into: HTMLElement, tools: SlipTools): void;
  /** The error, with its values, that stands in the way of keeping it as it is now. */
  fault?(): [ErrorName, ...string[]] | null;
}

async function selectionOf(doc: Document): Promise<Subject> {
  if (doc.querySelector(DRAWN)) await send('addScript', { script: 'drawn-maths' });
  const { found, spot } = pictureSpotter();
  let capture: Capture;
  try {
    capture = readSelection(doc, spot);
  } catch (error) {
    // Who has selected nothing and watches a video means its moment; a video that goes round and round is decoration.
    if (isEmpty(error) && doc.querySelector('video:not([loop])')) return momentOf();
    throw error;
  }
  const { range, headings, selectors, page } = capture;
  const kept = await withPictures(capture.passage, found, capture.doc);
  if (kept.passage.text === '' && kept.pictures.length === 0) throw new StudentError('errorSelectionEmpty');
  return {
    ...kept,
    headings,
    selectors,
    page,
    selected: { doc: capture.doc, range },
    place: () => boxInTop(range),
  };
}

const isEmpty = (error: unknown): boolean =>
  error instanceof StudentError && error.message === 'errorSelectionEmpty';

/** The moment of a video is read by a script of its own. */
async function momentOf(): Promise<Subject> {
  await send('addScript', { script: 'moment' });
  return takeSubject();
}

/** How each wish becomes a subject. Errors: the StudentErrors of reading, such as `errorSelectionEmpty`. */
export const SUBJECTS: Record<Wish, (doc: Document) => Subject | Promise<Subject>> = {
  selection: selectionOf,
  moment: momentOf,
  frame: takeSubject,
};

/** Shows the pictures in their places. To be called in the page: Firefox would hold markup with them to its policy. */
export function showPictures({ pictures }: Subject, root: ParentNode): void {
  for (const place of picturePlaces(root)) place.src = pictures[pictureAt(place)]?.dataUrl ?? '';
}
