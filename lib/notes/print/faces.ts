import type { Column, Side } from './paginate.ts';

/** One face of a sheet of paper: its columns from left to right as they lie on that face. */
export interface Face {
  isFront: boolean;
  columns: { column: Column; /** Its place in reading order. */ place: number }[];
}

/**
 * The faces in the order in which they are printed on both sides of sheets: a front, then its back. Sheets are turned
 * over their long edge, as a page of a book is, so that what lies on the left of the front lies behind on the right of
 * the back: there the columns stand the other way round.
 */
export function facesOf(sides: readonly Side[]): Face[] {
  return sides.flatMap((side) => {
    const columns = side.map((column, place) => ({ column, place }));
    return [
      { isFront: true, columns },
      { isFront: false, columns: columns.toReversed() },
    ];
  });
}
