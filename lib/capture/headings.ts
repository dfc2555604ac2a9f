import { moveChildren } from './dom.ts';
import { LONGEST_HEADING, MOST_HEADINGS, cut, oneLine } from './limits.ts';
import { convertMaths } from './maths/convert-maths.ts';
import { plainText } from './plain-text.ts';
import { allowOnly } from './allow-only.ts';

export const HEADING = 'h1, h2, h3, h4, h5, h6, [role="heading"]';

/** Parts of a page beside its content: their headings say nothing of a passage outside them. */
const ASIDE =
  'nav, aside, footer, dialog, [role="navigation"], [role="complementary"], [hidden], [aria-hidden="true"]';

/**
 * The headings of the sections that a point of the page stands in, nearest first: the last heading before it, then
 * the last before that of a higher level, and so on. At most 8, each cut to 500 UTF-16 units.
 */
export function headingsAbove(doc: Document, { startContainer }: Pick<Range, 'startContainer'>): string[] {
  const before: Element[] = [];
  let level = Infinity;
  for (const heading of doc.querySelectorAll(HEADING)) {
    if (heading.contains(startContainer)) {
      // The passage itself holds this one; only those above it are asked for.
      level = levelOf(heading);
      break;
    }
    if (!(heading.compareDocumentPosition(startContainer) & 4)) break;
    before.push(heading);
  }
  const above: string[] = [];
  for (const heading of before.reverse()) {
    if (above.length === MOST_HEADINGS) break;
    if (levelOf(heading) >= level || heading.closest(ASIDE)?.contains(startContainer) === false) continue;
    const text = textOf(heading, doc);
    if (text === '') continue;
    above.push(text);
    level = levelOf(heading);
  }
  return above;
}

/** The level that a heading says it has: 2 where it says none. */
export function levelOf(heading: Element): number {
  const level = Number(heading.getAttribute('aria-level') ?? /^h([1-6])$/.exec(heading.localName)?.[1] ?? 2);
  return level >= 1 ? level : 2;
}

function textOf(heading: Element, doc: Document): string {
  const inert = doc.implementation.createHTMLDocument('');
  const content = inert.createDocumentFragment();
  moveChildren(inert.importNode(heading, true), content);
  convertMaths(content);
  return cut(oneLine(plainText(allowOnly(content, doc))), LONGEST_HEADING);
}
