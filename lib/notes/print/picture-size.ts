import type { Frame } from './paper.ts';

/** Dots to the inch that a picture is printed with where it fits: twice what screens are reckoned with, sharp on paper. */
const DOTS_PER_INCH = 144;

/** The part of a column's height that a picture may take: its line and a heading stand above it. */
const TALLEST = 0.45;

/** How large a picture is printed, in CSS pixels (96 to the inch): never wider than its place, never too tall for a column. */
export function pictureSize(
  pixels: { width: number; height: number },
  width: number,
  { columnHeight }: Pick<Frame, 'columnHeight'>,
): { width: number; height: number } {
  const scale = Math.min(96 / DOTS_PER_INCH, width / pixels.width, (TALLEST * columnHeight) / pixels.height);
  return { width: pixels.width * scale, height: pixels.height * scale };
}
