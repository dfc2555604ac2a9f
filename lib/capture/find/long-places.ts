import type { FoldedText } from './folded-text.ts';
import { type Pattern, type Place, likePlaces } from './places.ts';

/** Units of each piece by which a long passage is told. */
const PIECE = 256;
const MOST_PIECES = 8;
/** By how much a passage may have grown or shrunk between two pieces. */
const GROWN = 2.5;
const LEEWAY = 128;

interface Piece {
  offset: number;
  place: Place;
  /** What the best chain up to this piece adds up to, and the piece before it in that chain. */
  sum: number;
  previous: Piece | null;
}

/**
 * The place of a passage too long to be compared as a whole: pieces of it are sought one by one, its ends among them,
 * and the longest chain of them in their old order is the passage.
 */
export function longPlaces(page: FoldedText, pattern: Pattern): Place[] {
  const { length } = pattern.exact;
  const count = Math.min(MOST_PIECES, Math.ceil(length / PIECE));
  const pieces: Piece[] = [];
  for (let index = 0; index < count; index++) {
    const offset = Math.round(((length - PIECE) * index) / (count - 1));
    for (const place of likePlaces(page, pieceOf(pattern, offset)))
      pieces.push(chained({ offset, place, sum: place.likeness, previous: null }, pieces));
  }
  const last = pieces.reduce<Piece | null>(
    (best, each) => (best && best.sum >= each.sum ? best : each),
    null,
  );
  return last ? [spanOf(page, last, length, count)] : [];
}

function pieceOf({ before, exact, after, setsEnds }: Pattern, offset: number): Pattern {
  const end = offset + PIECE;
  return {
    before: offset === 0 ? before : exact.part(0, 0),
    exact: exact.part(offset, end),
    after: end === exact.length ? after : exact.part(0, 0),
    setsEnds,
  };
}

function chained(piece: Piece, earlier: readonly Piece[]): Piece {
  let best = piece;
  for (const previous of earlier) {
    const sum = previous.sum + piece.place.likeness;
    if (sum > best.sum && canFollow(previous, piece)) best = { ...piece, sum, previous };
  }
  return best;
}

function canFollow(previous: Piece, piece: Piece): boolean {
  const was = piece.offset - previous.offset;
  const is = piece.place.start - previous.place.start;
  return was > 0 && is > was / GROWN - LEEWAY && is < was * GROWN + LEEWAY && is > 0;
}

function spanOf(page: FoldedText, last: Piece, length: number, count: number): Place {
  let first = last;
  while (first.previous) first = first.previous;
  return {
    start: Math.max(0, first.place.start - first.offset),
    end: Math.min(page.length, last.place.end + (length - PIECE - last.offset)),
    likeness: last.sum / count,
    before: first.place.before,
    after: last.place.after,
  };
}
