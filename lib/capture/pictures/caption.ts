import { cut, oneLine } from '../limits.ts';
import { LONGEST_ALT } from './limits.ts';
import type { WindowBox } from './size.ts';
import { altOf } from './spot.ts';

/** What a diagram in a page may be. */
export const DIAGRAM = 'figure, img, svg, canvas, video, table, math[display="block"]';

const HEADING = 'h1, h2, h3, h4, h5, h6, [role="heading"]';

export interface Caption {
  /** Captions of what lies under the box, else its alternative texts, else headings in it; empty where there is none. */
  text: string;
  /** Alternative texts of what lies under the box, else the same as `text`. */
  alt: string;
  /** The first element whose text is in `text`; null where an attribute says it. */
  element: Element | null;
  /** What lies under the box, in document order. */
  diagrams: Element[];
}

/** Reads what the page calls the things under a box of the window. */
export function captionUnder(doc: Document, box: WindowBox): Caption {
  const under = (css: string) => [...doc.querySelectorAll(css)].filter((each) => isUnder(each, box));
  const diagrams = under(DIAGRAM);
  const alts = joined(diagrams.map(altOf));
  const captions = diagrams.map(captionOf).filter((each) => each !== null);
  const elements = captions.length > 0 || alts ? captions : under(HEADING);
  const said = joined(elements.map((each) => oneLine(each.textContent)));
  const text = said || alts;
  return { text, alt: alts || text, element: (said && elements[0]) || null, diagrams };
}

const joined = (words: string[]): string => cut([...new Set(words)].filter(Boolean).join('\n'), LONGEST_ALT);

/** At least half of the element lies in the box, or nearly all of the box lies in the element. */
function isUnder(element: Element, box: WindowBox): boolean {
  const { left, top, right, bottom, width, height } = element.getBoundingClientRect();
  const across = Math.min(right, box.left + box.width) - Math.max(left, box.left);
  const down = Math.min(bottom, box.top + box.height) - Math.max(top, box.top);
  if (across <= 0 || down <= 0) return false;
  return across * down >= Math.min((width * height) / 2, 0.8 * box.width * box.height);
}

function captionOf(element: Element): Element | null {
  const caption = element.closest('figure')?.querySelector('figcaption') ?? element.querySelector('caption');
  if (caption) return caption;
  const names = element.getAttribute('aria-describedby') ?? element.getAttribute('aria-labelledby');
  const [first = ''] = names?.trim().split(/\s+/) ?? [];
  return element.ownerDocument.getElementById(first);
}
