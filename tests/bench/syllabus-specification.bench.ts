import { STYLES, specComesBack } from '../unit/syllabus/bring-in/spec-comes-back.ts';
import { type Figure, figure } from './figure.ts';

const SEEDS = [7, 8, 9, 10, 11, 12, 13, 14];

/**
 * Made specifications of 200 lines, in nine styles, written as PDFs and read again: the part of the lines that come back
 * whole, with their codes, under the right line, in the style in which that is least.
 */
export async function figures(): Promise<Figure[]> {
  let least = 1;
  for (const [, over] of STYLES) {
    const parts = [];
    for (const seed of SEEDS) parts.push((await specComesBack(over, seed)).part);
    least = Math.min(least, parts.reduce((sum, part) => sum + part, 0) / parts.length);
  }
  return [
    figure({
      name: 'syllabus/specification-in-place-worst-style',
      value: 100 * least,
      unit: '%',
      goal: { atLeast: 98 },
    }),
  ];
}
