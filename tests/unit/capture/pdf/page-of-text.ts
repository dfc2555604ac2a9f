import type { Piece } from '#lib/capture/pdf/piece.ts';

/** A piece that ends its line, unless told otherwise; letters are half as wide as they are high. */
export const aPiece = (text: string, over: Partial<Piece> = {}): Piece => {
  const size = over.size ?? 10;
  return {
    page: 1,
    text,
    left: 50,
    baseline: 100,
    width: text.length * size * 0.5,
    size,
    endsLine: true,
    ...over,
  };
};

/** Lines one below the other, a point and a quarter of their size apart. */
export const lines = (texts: readonly string[], over: Partial<Piece> = {}): Piece[] =>
  texts.map((text, i) => aPiece(text, { ...over, baseline: (over.baseline ?? 100) + 12.5 * i }));
