import { commonSize } from '#lib/capture/pdf/lines.ts';
import type { SpecLine } from './page-lines.ts';

/** How a specification is set: what its lines are compared with. Lengths in points. */
export interface Layout {
  /** The size that most letters have. */
  size: number;
  /** The distance from line to line within a paragraph. */
  leading: number;
  /** Where the lines of a page begin and end at the furthest: bound volumes differ from page to page. */
  left(page: number): number;
  right(page: number): number;
}

/** Sizes are given in hundredths of a point, since files differ by less. */
const round = (size: number): number => Math.round(size * 10) / 10;

export function layoutOf(lines: readonly SpecLine[]): Layout {
  const size = commonSize(lines.map((line) => ({ text: line.text, size: round(line.size) })));
  const body = lines.filter((line) => round(line.size) === size);
  const sides = [0, 1].map((parity) => {
    const facing = body.filter(({ page }) => page % 2 === parity);
    return { left: quantile(facing, 'left', 0.02), right: quantile(facing, 'right', 0.98) };
  });
  const all = { left: quantile(body, 'left', 0.02), right: quantile(body, 'right', 0.98) };
  const sideOf = (page: number) => {
    const { left, right } = sides[page % 2] ?? all;
    return { left: Number.isNaN(left) ? all.left : left, right: Number.isNaN(right) ? all.right : right };
  };
  return {
    size,
    leading: leadingOf(body, size),
    left: (page) => sideOf(page).left,
    right: (page) => sideOf(page).right,
  };
}

function quantile(lines: readonly SpecLine[], side: 'left' | 'right', part: number): number {
  const sorted = lines.map((line) => line[side]).sort((a, b) => a - b);
  return sorted[Math.floor(part * (sorted.length - 1))] ?? NaN;
}

/** The smallest distance that is common: most lines of a list may stand further apart than the lines of its entries. */
function leadingOf(body: readonly SpecLine[], size: number): number {
  const gaps = new Map<number, number>();
  body.forEach((line, i) => {
    const before = body[i - 1];
    const gap = before?.page === line.page ? Math.round(line.baseline - before.baseline) : 0;
    if (gap > 0.8 * size && gap < 2.5 * size) gaps.set(gap, (gaps.get(gap) ?? 0) + 1);
  });
  const total = [...gaps.values()].reduce((sum, count) => sum + count, 0);
  const common = [...gaps].filter(([, count]) => count >= 0.05 * total).map(([gap]) => gap);
  return common.length > 0 ? Math.min(...common) : 1.25 * size;
}
