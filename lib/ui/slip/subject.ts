import { readSelection } from '#lib/capture/read-selection.ts';
import type { MessageData } from '#lib/model/message.ts';
import type { Wish } from '#lib/model/wish.ts';
import type { Box } from './place.ts';

type Kept = MessageData<'keepClip'>;

/** What a slip is about: what will be kept, and where in the window it stands. */
export interface Subject extends Pick<Kept, 'passage' | 'headings' | 'selectors' | 'pictures' | 'page'> {
  /** Where it is now, in CSS pixels of the window: the slip stands beside it. */
  place(): Box;
}

function selectionOf(doc: Document): Subject {
  const { range, passage, headings, selectors, page } = readSelection(doc);
  return { passage, headings, selectors, page, pictures: [], place: () => range.getBoundingClientRect() };
}

/** How each wish becomes a subject. Errors: the StudentErrors of reading, such as `errorSelectionEmpty`. */
export const SUBJECTS: Partial<Record<Wish, (doc: Document) => Subject | Promise<Subject>>> = {
  selection: selectionOf,
};
