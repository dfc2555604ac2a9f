import { bestMatches } from './best-matches.ts';
import type { FoldedText } from './folded-text.ts';
import type { Pattern, Place, Stretch } from './places.ts';

/** With this share of errors, any two texts of one language look alike. */
const MOST_ERRORS = 0.5;
/** Up to this share, it tells more exactly where a changed passage begins or ends than the passage itself. */
const SURE = 0.25;
/** So many units around an end are searched for where it really is. */
const LEEWAY = 24;

/** Compares what stands on both sides of a place with prefix and suffix, and sets the ends of a changed text by them. */
export function withNeighbours(
  page: FoldedText,
  { before, after, setsEnds }: Pattern,
  place: Stretch,
): Place {
  const leeway = place.likeness === 1 || !setsEnds ? 0 : Math.min(LEEWAY, (place.end - place.start) >> 2);
  const from = Math.max(0, place.start - before.length - LEEWAY);
  const left = neighbour(before, page.slice(from, place.start + leeway), place.start - from, 'end');
  const start = Math.max(0, place.end - leeway);
  const beside = page.slice(start, Math.min(page.length, place.end + after.length + LEEWAY));
  const right = neighbour(after, beside, place.end - start, 'start');
  return {
    start: leeway > 0 && left?.isSure ? from + left.edge : place.start,
    end: leeway > 0 && right?.isSure ? start + right.edge : place.end,
    likeness: place.likeness,
    before: left && left.share,
    after: right && right.share,
  };
}

interface Neighbour {
  share: number;
  /** Where it touches the passage. */
  edge: number;
  isSure: boolean;
}

/** The neighbour in the window whose edge lies nearest to where the passage should be; null when it has no text. */
function neighbour(
  context: FoldedText,
  window: string,
  near: number,
  edge: 'start' | 'end',
): Neighbour | null {
  const { length } = context;
  if (length === 0) return null;
  const matches = bestMatches(window, context.slice(0, length), Math.floor(length * MOST_ERRORS));
  let best: Neighbour | null = null;
  for (const match of matches) {
    if (best && Math.abs(match[edge] - near) >= Math.abs(best.edge - near)) continue;
    const isSure = match.errors <= length * SURE && Math.abs(match[edge] - near) <= LEEWAY;
    best = { share: 1 - match.errors / (length * MOST_ERRORS), edge: match[edge], isSure };
  }
  return best ?? { share: 0, edge: near, isSure: false };
}
