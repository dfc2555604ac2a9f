import type { Cut } from '#lib/notes/print/bits.ts';

/** Formulas reach a little below the line that they stand in; in CSS pixels. */
const OVERLAP = 3;

/** How a line lies: what begins further down than `limit` is in a line below. */
interface Limit {
  limit: number;
  hasWords: boolean;
}

/**
 * Where the lines of a laid-out cell begin, the first included. Its children are the spans of its bits, in their order.
 * @param before where they began before a small change: most are as long as they were, which is quickly seen
 */
export function lineStarts(cell: HTMLElement, before: readonly Cut[] = []): Cut[] {
  const starts: Cut[] = [{ bit: 0, at: 0 }];
  let line: Limit = { limit: Infinity, hasWords: false };
  for (const [bit, span] of [...cell.children].entries()) {
    const text = span.firstChild instanceof Text ? span.firstChild : null;
    if (!text) {
      const box = span.getBoundingClientRect();
      if (box.top > line.limit) starts.push({ bit, at: 0 });
      if (box.top > line.limit || !line.hasWords) line = { limit: box.bottom - OVERLAP, hasWords: false };
      continue;
    }
    const lengthBefore = () => lengthOf(before, starts.length - 1, bit);
    for (let at = 0; at < text.length; at = firstBelow(text, at, line.limit, at + lengthBefore())) {
      const box = boxOf(text, at);
      if (!box) break;
      if (at > 0 || box.top > line.limit) {
        starts.push({ bit, at });
        line = { limit: Infinity, hasWords: false };
      }
      if (!line.hasWords) line = { limit: (box.top + box.bottom) / 2, hasWords: true };
    }
  }
  return starts;
}

/** How many characters a line had that began and ended within one bit; else 0. */
function lengthOf(starts: readonly Cut[], line: number, bit: number): number {
  const [start, end] = [starts[line], starts[line + 1]];
  return start?.bit === bit && end?.bit === bit ? end.at - start.at : 0;
}

/** The first character after `from` that lies below a limit; the length of the text where none does. */
function firstBelow(text: Text, from: number, limit: number, guess: number): number {
  const isBelow = (at: number) => at >= text.length || (boxOf(text, at)?.top ?? -Infinity) > limit;
  if (guess - 1 > from && guess < text.length && !isInPair(text.data, guess))
    if (isBelow(guess) && !isBelow(guess - 1)) return guess;
  let above = from;
  let step = 64;
  while (!isBelow(above + step)) {
    above += step;
    step *= 2;
  }
  let below = Math.min(above + step, text.length);
  while (below - above > 1) {
    const middle = (above + below) >> 1;
    if (isBelow(middle)) below = middle;
    else above = middle;
  }
  // A character of two units begins with its first one.
  return isInPair(text.data, below) && below - 1 > from ? below - 1 : below;
}

/** Whether a place lies between the two units of one character. */
const isInPair = (text: string, at: number): boolean => /[\uDC00-\uDFFF]/.test(text.charAt(at));

/** The box of a character, or of the next one that has one: the end of a line may have none. */
function boxOf(text: Text, at: number): DOMRect | null {
  const range = rangeIn(text.ownerDocument);
  for (let place = at; place < text.length; place++) {
    range.setStart(text, place);
    range.setEnd(text, place + 1);
    const box = [...range.getClientRects()].at(-1);
    if (box && box.height > 0) return box;
  }
  return null;
}

const ranges = new WeakMap<Document, Range>();

/** One range for all looks: a document keeps every range up to date, which makes each change to it dearer. */
function rangeIn(document: Document): Range {
  const range = ranges.get(document) ?? document.createRange();
  ranges.set(document, range);
  return range;
}
