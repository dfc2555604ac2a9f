import { formulaRanges } from '../split-tex.ts';
import type { WordReader } from './read-words.ts';

/** A stretch of a text, in UTF-16 units, end exclusive. */
export interface Range {
  from: number;
  to: number;
}

/** A part of a text worth showing, with what was found in it. */
export interface Excerpt extends Range {
  /** In order, apart from one another, and within the part. A formula is marked whole. */
  marks: Range[];
}

interface Hit extends Range {
  /** Which of the words looked for it answers. */
  of: number;
}

/** How long an excerpt is, and how much of it stands before the first word that was found. In UTF-16 units. */
const LENGTH = 200;
const BEFORE = 50;
/** How far a cut moves to fall between words. */
const TO_NEXT_WORD = 24;
/** Longer formulas may be cut. */
const LONGEST_FORMULA = 300;
/** Of a long text, so much is read before the best place so far is taken. */
const READ = 20_000;

/**
 * The part of a text that holds most of the words that were found, or its beginning where it holds none.
 * @param marked the words that were found, each with the place among the words looked for that it answers
 */
export function excerptOf(text: string, marked: ReadonlyMap<string, number>, reader: WordReader): Excerpt {
  const formulas = formulaRanges(text).filter(({ from, to }) => to - from <= LONGEST_FORMULA);
  const hits = hitsIn(text, marked, reader).map((hit) => ({ ...hit, ...widened(hit, formulas) }));
  const part = partAround(text, bestStart(hits), formulas);
  return { ...part, marks: joined(hits.filter(({ from, to }) => from >= part.from && to <= part.to)) };
}

function hitsIn(text: string, marked: ReadonlyMap<string, number>, reader: WordReader): Hit[] {
  const hits: Hit[] = [];
  reader.read(text, (word, from, to) => {
    const of = marked.get(word);
    if (of !== undefined) hits.push({ from, to, of });
    return hits.length === 0 || to < READ;
  });
  return hits.sort((a, b) => a.from - b.from);
}

/** Where the excerpt with most different words begins; the first of several. 0 where there are none. */
function bestStart(hits: readonly Hit[]): number {
  let best = { start: 0, words: 0 };
  // Each hit is a start in turn; the end moves along with it.
  const inside = new Map<number, number>();
  for (let first = 0, end = 0; first < hits.length; first++) {
    const { from, of } = hits[first]!;
    for (; end < hits.length && hits[end]!.to - from <= LENGTH - BEFORE; end++) {
      const other = hits[end]!.of;
      inside.set(other, (inside.get(other) ?? 0) + 1);
    }
    if (inside.size > best.words) best = { start: Math.max(0, from - BEFORE), words: inside.size };
    const left = (inside.get(of) ?? 0) - 1;
    if (left > 0) inside.set(of, left);
    else inside.delete(of);
    if (end <= first) end = first + 1;
  }
  return best.start;
}

/** The part that begins about there, cut between words, with formulas whole. */
function partAround(text: string, start: number, formulas: readonly Range[]): Range {
  // What is hardly longer is shown whole.
  if (text.length <= LENGTH + BEFORE) return { from: 0, to: text.length };
  const from = start <= TO_NEXT_WORD ? 0 : wordStart(text, Math.min(start, text.length - LENGTH));
  return widened({ from, to: wordEnd(text, Math.min(text.length, from + LENGTH)) }, formulas);
}

function wordStart(text: string, at: number): number {
  const space = text.slice(at, at + TO_NEXT_WORD).search(/\s/);
  return space < 0 ? wholeSign(text, at) : at + space + 1;
}

function wordEnd(text: string, at: number): number {
  if (at === text.length) return at;
  const before = text.slice(at - TO_NEXT_WORD, at + 1).search(/\s\S*$/);
  return before < 0 ? wholeSign(text, at) : at - TO_NEXT_WORD + before;
}

/** The same place or the next before it that is not within a sign: a surrogate pair, a letter with its accents. */
function wholeSign(text: string, at: number): number {
  const isWithin = (place: number) =>
    /^[\udc00-\udfff]/.test(text.charAt(place)) || /^[\p{M}\u200d]/u.test(text.slice(place, place + 2));
  let place = at;
  while (place > 0 && isWithin(place)) place -= 1;
  return place;
}

/** A stretch with the formulas whole that it touches. */
function widened({ from, to }: Range, formulas: readonly Range[]): Range {
  const touched = formulas.filter((one) => one.from < to && one.to > from);
  return {
    from: Math.min(from, ...touched.map((one) => one.from)),
    to: Math.max(to, ...touched.map((one) => one.to)),
  };
}

/** Stretches in order, those that touch or overlap as one. */
function joined(ranges: readonly Range[]): Range[] {
  const all: Range[] = [];
  for (const { from, to } of ranges) {
    const last = all[all.length - 1];
    if (last && from <= last.to) last.to = Math.max(last.to, to);
    else all.push({ from, to });
  }
  return all;
}
