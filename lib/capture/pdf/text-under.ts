import { type Rect, holds } from './place.ts';
import { type Piece, boxOf } from './piece.ts';

/** The pieces of a page under a frame, word by word where the frame cuts a piece. */
export function piecesUnder(frame: Rect, pieces: readonly Piece[]): Piece[] {
  return pieces.flatMap((piece) => {
    if (piece.text.trim() === '') return holds(frame, boxOf(piece)) || piece.text === '' ? [piece] : [];
    const words = [...piece.text.matchAll(/\S+\s*/g)].filter(({ index, 0: word }) =>
      holds(frame, boxOf(piece, index, index + word.trimEnd().length)),
    );
    const [first, last] = [words[0], words.at(-1)];
    if (!first || !last) return [];
    const [from, to] = [first.index, last.index + last[0].length];
    const { left, width } = boxOf(piece, from, to);
    return [{ ...piece, text: piece.text.slice(from, to), left, width }];
  });
}
