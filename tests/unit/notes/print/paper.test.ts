import { describe, expect, test } from 'vitest';
import { PAPERS, PX_PER_MM, columnLeft, frameOf } from '#lib/notes/print/paper.ts';
import { pictureSize } from '#lib/notes/print/picture-size.ts';

describe('paper', () => {
  // ISO 216:2007, 3: the sides of every size of the series are as 1 to the square root of 2, A0 has the area of one
  // square metre, each size is half of the one before, and lengths are in whole millimetres.
  test('A4 follows from the definition of ISO 216', () => {
    let [width, height] = [2 ** -0.25, 2 ** 0.25].map((metres) => Math.round(metres * 1000)) as [
      number,
      number,
    ];
    for (let size = 0; size < 4; size++) [width, height] = [Math.floor(height / 2), width];
    expect(PAPERS.a4).toEqual({ width, height });
    expect(PAPERS.a4).toEqual({ width: 210, height: 297 });
    expect(Math.abs(height - width * Math.SQRT2)).toBeLessThan(0.5);
    // Rounding down to the millimetre loses less than one millimetre of each side.
    const area = PAPERS.a4.width * PAPERS.a4.height;
    expect(area).toBeLessThanOrEqual(1e6 / 16);
    expect((width + 1) * (height + 1)).toBeGreaterThan(1e6 / 16);
  });

  // ANSI/ASME Y14.1, size A: 8.5 by 11 inches.
  test('Letter is 8.5 by 11 inches', () => {
    expect(PAPERS.letter.width / 25.4).toBeCloseTo(8.5, 10);
    expect(PAPERS.letter.height / 25.4).toBeCloseTo(11, 10);
  });

  test.each([
    ['a4', 1],
    ['a4', 2],
    ['letter', 1],
    ['letter', 2],
  ] as const)('%s in %i: the columns stand within the side, with blank edges', (paper, columns) => {
    const frame = frameOf({ paper, columns });
    expect(frame.page.width).toBeCloseTo(PAPERS[paper].width * PX_PER_MM, 10);
    const across = 2 * frame.side + columns * frame.columnWidth + (columns - 1) * frame.columnGap;
    expect(across).toBeCloseTo(frame.page.width, 10);
    expect(frame.side).toBeGreaterThanOrEqual(12 * PX_PER_MM);
    expect(columnLeft(frame, columns - 1) + frame.columnWidth + frame.side).toBeCloseTo(frame.page.width, 10);
    expect(frame.page.height - frame.top - frame.columnHeight).toBeGreaterThanOrEqual(10 * PX_PER_MM);
    expect(Number.isInteger(frame.columnWidth) && Number.isInteger(frame.columnHeight)).toBe(true);
  });
});

describe('pictures', () => {
  const place = { columnHeight: 1000 };

  test('a small one has its size at 144 dots an inch', () => {
    expect(pictureSize({ width: 144, height: 72 }, 300, place)).toEqual({ width: 96, height: 48 });
  });

  test('a wide one is as wide as its place, in proportion', () => {
    expect(pictureSize({ width: 1600, height: 400 }, 320, place)).toEqual({ width: 320, height: 80 });
  });

  test('a tall one leaves room above it', () => {
    const { width, height } = pictureSize({ width: 20, height: 1600 }, 320, place);
    expect(height).toBe(450);
    expect(width).toBeCloseTo(5.625, 10);
  });
});
