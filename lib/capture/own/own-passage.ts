import type { Passage } from '#lib/model/clip.ts';
import { StudentError } from '#lib/model/student-error.ts';
import { formulaRanges, splitTex } from '#lib/notes/split-tex.ts';
import { MATHML, isElement, isText } from '../dom.ts';
import { LONGEST_PASSAGE, LONGEST_PASSAGE_HTML } from '../limits.ts';
import { parseMarkup } from '../markup.ts';
import { completeMaths } from '../maths/complete-maths.ts';
import { convertMaths } from '../maths/convert-maths.ts';
import { LONGEST_ALT } from '../pictures/limits.ts';
import { plainText } from '../plain-text.ts';
import { cleanPassage, serialise } from '../sanitise.ts';
import { readOffice } from './office.ts';

/** Rich text from the clipboard, cleaned. */
export interface Pasted {
  /** Of the allow-list; `<img data-picture="0">` is the first of `pictures`. */
  html: string;
  /** Pictures in it, as data URLs with their texts. */
  pictures: { dataUrl: string; alt: string }[];
  /** How many pictures did not come along: only their address is on the clipboard. */
  lost: number;
}

/**
 * Cleans rich text from the clipboard, whichever program it is from. Nothing is fetched: pictures come along where
 * their bytes are in the text.
 *
 * @param doc any document of the window that the work is done in
 */
export function readPasted(markup: string, doc: Document): Pasted {
  const inert = doc.implementation.createHTMLDocument('');
  const root = parseMarkup(markup, inert);
  if (!root) return { html: '', pictures: [], lost: 0 };
  readOffice(root);
  return cleanPasted(root, doc);
}

/** The same for nodes in a document without a view; they are changed. */
export function cleanPasted(root: Element, doc: Document): Pasted {
  convertMaths(root);
  const pictures: Pasted['pictures'] = [];
  let lost = 0;
  for (const image of root.querySelectorAll('img')) {
    const dataUrl = image.getAttribute('src') ?? '';
    image.removeAttribute('data-picture');
    if (Number(image.getAttribute('width') ?? SMALLEST) < SMALLEST) continue;
    if (/^data:image\/[\w.+-]+;base64,/i.test(dataUrl)) {
      const alt = (image.getAttribute('alt') ?? '').replace(/[<>]/g, ' ').trim().slice(0, LONGEST_ALT);
      // The number stands first, as wherever pictures have their places.
      const place = image.ownerDocument.createElement('img');
      place.setAttribute('data-picture', String(pictures.push({ dataUrl, alt }) - 1));
      place.setAttribute('alt', alt);
      image.replaceWith(place);
    } else lost++;
  }
  return { html: htmlOf(withTex(root), doc), pictures, lost };
}

/** What is narrower, in pixels, only sets text apart. */
const SMALLEST = 3;

/** Whether pasted text says more by its form than its words alone: lists, tables, emphasis, formulas, pictures. */
export const isRich = ({ html }: Pasted): boolean =>
  /<(ul|ol|dl|table|h[1-6]|strong|b|em|i|u|s|sub|sup|math|img|blockquote|pre|code|mark)\b/.test(html);

/** Typed text as paragraphs, a line end as a line end, and TeX as formulas. */
export function typedHtml(text: string, doc: Document): string {
  const inert = doc.implementation.createHTMLDocument('');
  const root = inert.createElement('div');
  for (const block of blocksOf(text)) {
    const paragraph = inert.createElement('p');
    paragraph.setAttribute('dir', 'auto');
    block
      .split('\n')
      .forEach((line, i) => paragraph.append(...(i > 0 ? [inert.createElement('br')] : []), line));
    root.append(paragraph);
  }
  return htmlOf(withTex(root), doc);
}

/** Blocks between empty lines; an empty line within a formula ends none. */
function blocksOf(typed: string): string[] {
  const text = typed.replace(/\r\n?/g, '\n');
  const formulas = formulaRanges(text);
  const blocks: string[] = [];
  let from = 0;
  for (const match of text.matchAll(/\n[ \t]*\n+/g)) {
    if (formulas.some((one) => match.index > one.from && match.index < one.to)) continue;
    blocks.push(text.slice(from, match.index));
    from = match.index + match[0].length;
  }
  return [...blocks, text.slice(from)]
    .map((block) => block.replace(/^\n+|\s+$/g, ''))
    .filter((block) => block.trim() !== '');
}

/** Elements in which dollar signs and backslashes are no TeX. */
const VERBATIM = 'math, pre, code, kbd, samp';

/** TeX in the words of the element as formulas. A formula does not reach over an element's end, but over line ends. */
export function withTex<T extends Element | DocumentFragment>(root: T): T {
  joinLines(root);
  for (const node of textNodes(root)) {
    const pieces = splitTex(node.data);
    if (pieces.every(({ kind }) => kind === 'words')) continue;
    node.replaceWith(
      ...pieces.flatMap((piece): (Node | string)[] => {
        if (piece.kind === 'words') return wordsOf(piece.text, node.ownerDocument);
        if (piece.tex === '') return [piece.display ? '\\[ \\]' : '\\( \\)'];
        return [formulaOf(piece.tex, piece.display, node.ownerDocument)];
      }),
    );
  }
  // What was joined and is no formula stands on lines of its own again.
  for (const node of textNodes(root))
    if (node.data.includes('\n')) node.replaceWith(...wordsOf(node.data, node.ownerDocument));
  return root;
}

/** Line ends as characters, so that a formula may reach over them; those of the markup are mere white space. */
function joinLines(root: Element | DocumentFragment): void {
  for (const node of textNodes(root)) node.data = node.data.replace(/\s*\n\s*/g, ' ');
  for (const lineEnd of root.querySelectorAll('br'))
    if (!lineEnd.closest(VERBATIM)) lineEnd.replaceWith('\n');
  root.normalize();
}

function wordsOf(text: string, doc: Document): Node[] {
  return text
    .split('\n')
    .flatMap((line, i) => [
      ...(i > 0 ? [doc.createElement('br')] : []),
      ...(line === '' ? [] : [doc.createTextNode(line)]),
    ]);
}

function textNodes(root: Node): Text[] {
  return [...root.childNodes].flatMap((node) => {
    if (isText(node)) return [node];
    return isElement(node) && !node.matches(VERBATIM) ? textNodes(node) : [];
  });
}

/** A formula that is still to be completed: its TeX in the place of what it looks like. */
function formulaOf(tex: string, display: boolean, doc: Document): Element {
  const make = (name: string, ...content: (Node | string)[]) => {
    const made = doc.createElementNS(MATHML, name);
    made.append(...content);
    return made;
  };
  const note = make('annotation', tex);
  note.setAttribute('encoding', 'application/x-tex');
  const math = make('math', make('semantics', make('mtext', tex), note));
  if (display) math.setAttribute('display', 'block');
  return math;
}

/** Cleaned markup, its formulas as MathML. TeX that does not parse stays as it was typed. */
function htmlOf(root: Element, doc: Document): string {
  const fragment = root.ownerDocument.createDocumentFragment();
  fragment.append(...root.childNodes);
  return completeMaths({ text: '', html: serialise(cleanPassage(fragment, doc)) }).html;
}

/**
 * A passage of the student's own, ready to be kept.
 * Errors: StudentError `errorOwnLong` with its length and the longest that is kept, in characters.
 */
export function ownPassage(html: string, doc: Document): Passage {
  const text = plainText(cleanPassage(html, doc));
  if (text.length > LONGEST_PASSAGE || html.length > LONGEST_PASSAGE_HTML)
    throw new StudentError('errorOwnLong', text.length, LONGEST_PASSAGE);
  return { text, html };
}
