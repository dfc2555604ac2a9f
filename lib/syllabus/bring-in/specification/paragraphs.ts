import { joint } from '#lib/capture/pdf/letters.ts';
import { readLine } from '../../outline/read-line.ts';
import type { Layout } from './layout.ts';
import type { SpecLine } from './page-lines.ts';

/** A line with those that it runs on over. */
export interface Paragraph extends SpecLine {
  /** How many lines it has. */
  lines: number;
}

/** By how much the places where lines begin may differ, by the size of their letters. */
const ALIGNED = 0.6;
/** Sizes that differ by more than this part are two. */
const SAME_SIZE = 0.04;
/** How much further apart than usual, lines are no longer of one paragraph. */
const WIDE = 1.22;

/** The lines joined where a paragraph runs on. */
export function paragraphsOf(lines: readonly SpecLine[], layout: Layout): Paragraph[] {
  const words = lines.map(({ text }) => text.toLowerCase()).join(' ');
  const paragraphs: Paragraph[] = [];
  let before: SpecLine | undefined;
  for (const line of lines) {
    const open = paragraphs.at(-1);
    if (open && before && runsOn(open, before, line, layout)) {
      const { drop, add } = joint(open.text, line.text, words);
      open.text = open.text.slice(0, open.text.length - drop) + add + line.text;
      open.lines += 1;
    } else paragraphs.push({ ...line, lines: 1 });
    before = line;
  }
  return paragraphs;
}

/** Whether a line goes on from the one before it, the last of an open paragraph. */
function runsOn(open: Paragraph, before: SpecLine, line: SpecLine, layout: Layout): boolean {
  if (Math.abs(line.size - before.size) > SAME_SIZE * before.size) return false;
  const isNextPage = line.page === before.page + 1;
  const gap = line.baseline - before.baseline;
  const usual = layout.leading * (line.size / layout.size);
  if (!isNextPage && (line.page !== before.page || gap <= 0 || gap > WIDE * usual)) return false;
  // On another page the margins may lie elsewhere.
  const shift = layout.left(line.page) - layout.left(before.page);
  const near = ALIGNED * line.size;
  const isAligned = [open.textLeft, open.left, before.left].some(
    (left) => Math.abs(line.left - shift - left) <= near,
  );
  if (!isAligned || isMarked(line, open, near + Math.abs(shift))) return false;
  const isBroken = /\p{Ll}-$/u.test(before.text) && /^\p{Ll}/u.test(line.text);
  if (isBroken) return true;
  const hasEnded = /[.;!?:]$/.test(before.text);
  if (/^\p{Ll}/u.test(line.text) && !hasEnded && open.textLeft > open.left) return true;
  return isFull(before, line, layout) && !(isNextPage && hasEnded);
}

/** Whether a line opens with a number or bullet; behind a hanging indent it is a word of the text. */
function isMarked(line: SpecLine, open: Paragraph, near: number): boolean {
  const mark = readLine({ line: 1, text: line.text, afterBlank: false })?.mark;
  if (!mark || mark.kind === 'none') return false;
  if (mark.kind === 'bullet') return true;
  const isHung = open.textLeft > open.left + near && Math.abs(line.left - open.textLeft) <= near;
  const label = 'label' in mark ? mark.label : null;
  return label !== null && (label.sure ? !isHung || label.path === null || label.path.length > 1 : !isHung);
}

/** Whether the first word of the next line would not have fitted behind the line. */
function isFull(before: SpecLine, line: SpecLine, layout: Layout): boolean {
  const first = (/^\S+/.exec(line.text)?.[0] ?? '').length;
  const each = (line.right - line.left) / Math.max(1, line.text.length);
  return before.right + (first + 1) * each > layout.right(before.page) - 0.5 * line.size;
}
