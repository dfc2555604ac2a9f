import { captionUnder } from '#lib/capture/pictures/caption.ts';
import { type WindowBox, partOfView } from '#lib/capture/pictures/size.ts';
import { figureOf } from '#lib/capture/pictures/figure.ts';
import { headingsAbove } from '#lib/capture/headings.ts';
import { readPlace } from '#lib/capture/page/place.ts';
import { describeRange } from '#lib/capture/find/describe-range.ts';
import { StudentError } from '#lib/model/student-error.ts';
import { send } from '../send.ts';
import type { Subject } from '../slip/subject.ts';
import { shown } from './shown.ts';

/**
 * The diagram under a frame of the window, as a subject for the slip: its picture as the screen shows it, with the
 * page's caption for it. The layer must be gone from the page.
 * Errors: StudentErrors of reading the page and of taking the picture.
 */
export async function framedSubject(doc: Document, box: WindowBox): Promise<Subject> {
  const page = readPlace(doc);
  const { text: caption, alt, element, diagrams } = captionUnder(doc, box);
  const range = doc.createRange();
  range.selectNode(diagrams.at(-1) ?? nearest(doc, box));
  const headings = headingsAbove(doc, range);
  // A diagram that the page does not name goes by the heading it stands under.
  const text = caption || headings[0] || page.title;
  await shown(doc);
  const [cut] = await send('takePictures', { parts: [partOfView(box, doc.defaultView!)] });
  if (!cut) throw new StudentError('errorPictureHidden');
  // Where it stood, though the page be scrolled since.
  const { scrollX, scrollY } = doc.defaultView!;
  return {
    passage: { text, html: figureOf(doc, text, [{ alt, width: box.width, height: box.height }]) },
    headings,
    selectors: element ? quoteOf(doc, element) : [],
    pictures: [{ ...cut, alt }],
    page,
    framed: true,
    place() {
      const left = box.left + scrollX - doc.defaultView!.scrollX;
      const top = box.top + scrollY - doc.defaultView!.scrollY;
      return { left, top, right: left + box.width, bottom: top + box.height };
    },
  };
}

function nearest(doc: Document, { left, top, width, height }: WindowBox): Element {
  const middle = doc.elementFromPoint(left + width / 2, top + height / 2);
  return middle?.parentNode ? middle : doc.body;
}

/** The caption as it stands in the page, so that the desk finds the way back to it. */
function quoteOf(doc: Document, caption: Element): Subject['selectors'] {
  const range = doc.createRange();
  range.selectNodeContents(caption);
  return doc.body.contains(caption) ? describeRange(range, doc.body) : [];
}
