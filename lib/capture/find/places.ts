import { bestMatches } from './best-matches.ts';
import type { FoldedText } from './folded-text.ts';
import { SHORTEST_LISTED, STEP, gramsIn } from './grams.ts';
import { withNeighbours } from './neighbours.ts';
import type { PageText } from './page-text.ts';

/** What is looked for, folded as the page is. */
export interface Pattern {
  before: FoldedText;
  exact: FoldedText;
  after: FoldedText;
  /** Whether prefix and suffix tell where a changed text ends: not where formulas may have come between. */
  setsEnds: boolean;
}

/** A stretch of the folded text of a page. */
export interface Stretch {
  start: number;
  end: number;
  /** From 0 to 1: how much of the exact text stands there. */
  likeness: number;
}

/**
 * The same with how well prefix and suffix fit, from 0 (no better than any text would) to 1; null where the pattern has
 * none.
 */
export interface Place extends Stretch {
  before: number | null;
  after: number | null;
}

/** Edits shift what follows them, so hits are counted together in bands so many units wide. */
const BAND = 64;
/** Places that are looked at closely. */
const CLOSE_LOOKS = 4;
/** A place where text and both sides fit so well needs no other to be compared with. */
const CLEAR = 0.8;
/** A page may say nearly the same at another place, which has as many grams but for so small a part. */
const AS_LIKELY = 0.7;
/** Beyond this share of errors, two texts have nothing to do with one another. */
const MOST_ERRORS = 0.34;

/** Of a text that stands everywhere, so many places on each side of the old one are looked at. */
const PLACES_EACH_SIDE = 100;

/** Where a short or common text stands, to the letter, nearest the old place on both sides. */
export function placesOfCommon(page: PageText, exact: string, pattern: Pattern, near: number): Place[] {
  const units: number[] = [];
  let at = page.text.indexOf(exact, near);
  for (let left = PLACES_EACH_SIDE; at >= 0 && left > 0; left--) {
    units.push(at);
    at = page.text.indexOf(exact, at + 1);
  }
  at = near > 0 ? page.text.lastIndexOf(exact, near - 1) : -1;
  for (let left = PLACES_EACH_SIDE; at >= 0 && left > 0; left--) {
    units.push(at);
    at = at > 0 ? page.text.lastIndexOf(exact, at - 1) : -1;
  }
  const starts = units.map((unit) => page.squeezed.placeOf(unit));
  return starts.flatMap((start) => placeAt(page.squeezed, pattern, start));
}

/** Where the exact text itself stands; null when it is too short or too common for the page's list of grams. */
export function equalPlaces(page: FoldedText, pattern: Pattern): Place[] | null {
  const { exact } = pattern;
  for (let from = 0; from + SHORTEST_LISTED <= exact.length; from += STEP) {
    const hits = gramHits(page, exact, from);
    if (!hits) continue;
    return hits
      .filter((start) => isEqualAt(page, exact, start))
      .flatMap((start) => placeAt(page, pattern, start));
  }
  return null;
}

/** The place there, to the letter; none where no reader sees it. */
function placeAt(page: FoldedText, pattern: Pattern, start: number): Place[] {
  const end = start + pattern.exact.length;
  return page.isSeen(start, end) ? [withNeighbours(page, pattern, { start, end, likeness: 1 })] : [];
}

function gramHits(page: FoldedText, exact: FoldedText, from: number): number[] | null {
  const hits: number[] = [];
  for (let each = from; each < from + STEP; each++) {
    const places = page.grams.places(exact.codes, each);
    if (!places) return null;
    for (const place of places) hits.push(place - each);
  }
  return hits;
}

function isEqualAt(page: FoldedText, exact: FoldedText, start: number): boolean {
  if (start < 0 || start + exact.length > page.length) return false;
  for (let each = 0; each < exact.length; each++)
    if (page.codes[start + each] !== exact.codes[each]) return false;
  return true;
}

/**
 * Places where most of the pattern stands, as far as the grams that it shares with the page tell: likeliest first, and
 * once one is as good as can be in a changed page, only those for which as much speaks.
 */
export function likePlaces(page: FoldedText, pattern: Pattern): Place[] {
  const { before, exact, after } = pattern;
  const places: Place[] = [];
  let enough = 0;
  for (const { shift, votes } of likelyShifts(page, join(before, exact, after))) {
    if (votes < enough) break;
    const stretch = closest(page, exact, shift + before.length);
    if (!stretch || !page.isSeen(stretch.start, stretch.end)) continue;
    if (places.some((other) => other.start < stretch.end && stretch.start < other.end)) continue;
    const place = withNeighbours(page, pattern, stretch);
    places.push(place);
    if (isClear(place)) enough = Math.max(enough, votes * AS_LIKELY);
  }
  return places;
}

const isClear = ({ likeness, before, after }: Place): boolean =>
  Math.min(likeness, before ?? 1, after ?? 1) >= CLEAR && before !== null && after !== null;

function join(...parts: FoldedText[]): Uint16Array {
  const codes = new Uint16Array(parts.reduce((sum, { length }) => sum + length, 0));
  let length = 0;
  for (const part of parts) {
    codes.set(part.codes, length);
    length += part.length;
  }
  return codes;
}

interface Shift {
  shift: number;
  /** Grams that speak for it. */
  votes: number;
}

/** By how much the pattern would have to be shifted to lie on the page, likeliest first. */
function likelyShifts(page: FoldedText, whole: Uint16Array): Shift[] {
  const bands = new Map<number, { hits: number; sum: number }>();
  for (let from = 0; from < gramsIn(whole.length); from++) {
    for (const place of page.grams.places(whole, from) ?? []) {
      const shift = place - from;
      const band = bands.get(Math.floor(shift / BAND)) ?? { hits: 0, sum: 0 };
      band.hits++;
      band.sum += shift;
      bands.set(Math.floor(shift / BAND), band);
    }
  }
  const ranked = [...bands].map(([band, { hits, sum }]) => {
    const beside = Math.max(bands.get(band - 1)?.hits ?? 0, bands.get(band + 1)?.hits ?? 0);
    return { shift: Math.round(sum / hits), hits, votes: hits + beside };
  });
  ranked.sort((a, b) => b.votes - a.votes || b.hits - a.hits);
  const best = ranked[0]?.votes ?? 0;
  const likely = ranked.filter(({ votes }) => votes * 2 >= best).slice(0, 2 * CLOSE_LOOKS);
  return likely.filter(isFirstOfItsBand).slice(0, CLOSE_LOOKS);
}

/** Of two bands side by side, the fuller one speaks for both. */
function isFirstOfItsBand({ shift }: { shift: number }, index: number, all: { shift: number }[]): boolean {
  return !all.slice(0, index).some((other) => Math.abs(other.shift - shift) < BAND);
}

function closest(page: FoldedText, exact: FoldedText, expected: number): Stretch | null {
  const slack = (BAND >> 1) + (exact.length >> 3);
  const from = Math.max(0, expected - slack);
  const window = page.slice(from, Math.min(page.length, expected + exact.length + slack));
  const most = Math.floor(exact.length * MOST_ERRORS);
  let best: Stretch | null = null;
  for (const { start, end, errors } of bestMatches(window, exact.slice(0, exact.length), most)) {
    const place = { start: from + start, end: from + end, likeness: 1 - errors / exact.length };
    if (!best || Math.abs(place.start - expected) < Math.abs(best.start - expected)) best = place;
  }
  return best;
}
