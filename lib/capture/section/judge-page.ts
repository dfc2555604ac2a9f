import { Readability } from '@mozilla/readability';
import { oneLine } from '../limits.ts';
import { FORMULA, TEX_SCRIPT } from '../maths/formula.ts';

/** What of a page was found to be its explanation. */
export interface Judged {
  /** Places of its elements in the page's document order. */
  numbers: ReadonlySet<number>;
  /** Texts that stood in a container by themselves: they were given paragraphs of their own, which have no number. */
  texts: ReadonlySet<string>;
  /** In UTF-16 units of text. */
  length: number;
  /** The line that names the author; empty where none was found. */
  byline: string;
}

/** Carries an element's number from the page to its copy and on into what is found there. */
const MARK = 'data-plumbline';

/** Pictures that read as a formula, besides those that a reader of maths knows. */
const FORMULA_IMAGE = 'img[alt*="="]';

/** Stands for a formula while the text is weighed: what typesetters draw it with is no text, or the same text thrice. */
const STAND_IN = 'formula';

/** Judges a copy of the page with @mozilla/readability. Null where it finds nothing, or is not let. */
export function judgePage(doc: Document): Judged | null {
  try {
    const reader = new Readability<Node>(markedCopy(doc), {
      disableJSONLD: true,
      serializer: (node) => node,
    });
    const { content, byline } = reader.parse() ?? {};
    if (!content) return null;
    const found = content as Element;
    const marked = [...found.querySelectorAll(`[${MARK}]`)];
    const paragraphs = [...found.querySelectorAll(`p:not([${MARK}])`)];
    return {
      numbers: new Set(marked.map((element) => Number(element.getAttribute(MARK)))),
      texts: new Set(paragraphs.map((paragraph) => oneLine(paragraph.textContent))),
      length: oneLine(found.textContent).length,
      byline: oneLine(byline),
    };
  } catch {
    // A second look parses the copy anew, which some pages forbid.
    return null;
  }
}

/** Only a copy may be judged, since judging takes it apart. */
function markedCopy(doc: Document): Document {
  const copy = doc.cloneNode(true) as Document;
  for (const [index, element] of [...copy.querySelectorAll('*')].entries())
    element.setAttribute(MARK, String(index));
  for (const formula of copy.querySelectorAll(`${FORMULA}, ${TEX_SCRIPT}, ${FORMULA_IMAGE}`)) {
    if (formula.parentElement?.closest(FORMULA)) continue;
    const word = copy.createElement('span');
    word.setAttribute(MARK, formula.getAttribute(MARK)!);
    word.textContent = STAND_IN;
    formula.replaceWith(word);
  }
  // In lecture notes a remark is part of the explanation; elsewhere the word means what readers wrote below.
  for (const remark of copy.querySelectorAll('[class~="remark" i]')) remark.removeAttribute('class');
  // A page that names its author in its head keeps its byline; markup in the others would be parsed, which some forbid.
  for (const other of copy.querySelectorAll('meta, noscript, template')) other.remove();
  return copy;
}
