import type { Passage } from '#lib/model/clip.ts';
import { StudentError } from '#lib/model/student-error.ts';
import { allowOnly, serialise } from '../allow-only.ts';
import { LONGEST_PASSAGE } from '../limits.ts';
import { plainText } from '../plain-text.ts';
import { joint, plainLetters } from './letters.ts';
import { type Line, linesOf } from './lines.ts';
import { paragraphsOf } from './paragraphs.ts';
import type { Piece } from './piece.ts';

/** How much smaller raised and lowered letters are, and how far off the line, by the line's size. */
const SMALL = 0.86;
const RAISED = 0.15;
const LOWERED = 0.07;

interface Part {
  text: string;
  kind: 'text' | 'sup' | 'sub';
}

/**
 * The passage that pieces of a PDF make up: paragraphs, words broken at line ends whole again, raised and lowered
 * letters as such.
 *
 * @param pages the text of the pages, by which a hyphen that belongs to a word is known
 * @param doc any document of the window that the work is done in
 * @throws StudentError `errorSelectionTooLong` with length and limit
 */
export function passageOf(pieces: readonly Piece[], pages: string, doc: Document): Passage {
  const length = pieces.reduce((sum, { text }) => sum + text.length, 0);
  if (length > LONGEST_PASSAGE) throw new StudentError('errorSelectionTooLong', length, LONGEST_PASSAGE);
  const known = pages.toLowerCase();
  const content = doc.createDocumentFragment();
  for (const lines of paragraphsOf(linesOf(pieces))) {
    const paragraph = doc.createElement('p');
    for (const { kind, text } of joined(lines, known))
      paragraph.append(kind === 'text' ? text : element(doc, kind, text));
    if (paragraph.textContent.trim() !== '') content.append(paragraph);
  }
  const clean = allowOnly(content, doc);
  return { text: plainText(clean), html: serialise(clean) };
}

function element(doc: Document, kind: 'sup' | 'sub', text: string): HTMLElement {
  const made = doc.createElement(kind);
  made.textContent = text;
  return made;
}

/** The parts of a paragraph's lines on one line. */
function joined(lines: readonly Line[], known: string): Part[] {
  const parts: Part[] = [];
  for (const line of lines) {
    const next = partsOf(line);
    const last = parts.at(-1);
    if (last && next[0]) {
      const { drop, add } = joint(last.text, next[0].text, known);
      last.text = last.text.slice(0, last.text.length - drop);
      if (last.kind === 'text') last.text += add;
      else parts.push({ kind: 'text', text: add });
      next[0].text = next[0].text.trimStart();
    }
    for (const part of next) add(parts, part);
  }
  return parts;
}

function partsOf(line: Line): Part[] {
  const parts: Part[] = [];
  for (const piece of line.pieces) {
    const text = plainLetters(piece.text);
    // A space belongs to the line, however small it is set.
    if (text !== '') add(parts, { text, kind: text === ' ' ? 'text' : kindOf(piece, line) });
  }
  const [first] = parts;
  if (first) first.text = first.text.trimStart();
  return parts;
}

function add(parts: Part[], part: Part): void {
  const last = parts.at(-1);
  if (last?.kind !== part.kind) parts.push({ ...part });
  else last.text = `${last.text}${part.text}`.replace(/ {2,}/g, ' ');
}

function kindOf(piece: Piece, line: Line): Part['kind'] {
  if (piece.size > SMALL * line.size) return 'text';
  const up = (line.baseline - piece.baseline) / line.size;
  if (up > RAISED) return 'sup';
  return up < -LOWERED ? 'sub' : 'text';
}
