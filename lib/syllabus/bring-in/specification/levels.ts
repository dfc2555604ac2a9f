import { readLabel } from '../../outline/label.ts';
import type { Layout } from './layout.ts';
import type { Paragraph } from './paragraphs.ts';

/** How much larger than most letters a heading's are. */
const LARGER = 1.07;
/** Sizes within this part of each other are one. */
const SAME = 0.04;
/** Nothing longer is a heading, in characters. */
const LONGEST_HEADING = 200;

/** The level of each heading, from 1: by its size, then by the steps of its number. Null for what is no heading. */
export function headingLevels(paragraphs: readonly Paragraph[], layout: Layout): (number | null)[] {
  const isHeading = ({ size, text }: Paragraph): boolean =>
    size > LARGER * layout.size && text.length <= LONGEST_HEADING && /\p{L}/u.test(text);
  const sizes = distinct(paragraphs.filter(isHeading).map(({ size }) => size));
  const keys = paragraphs.map((paragraph) => {
    if (!isHeading(paragraph)) return null;
    const rank = sizes.findIndex((size) => Math.abs(size - paragraph.size) <= SAME * size);
    return rank * 100 + stepsOf(paragraph.text);
  });
  const ranks = [...new Set(keys.filter((key) => key !== null))].sort((a, b) => a - b);
  return keys.map((key) => (key === null ? null : ranks.indexOf(key) + 1));
}

/** Sizes from the largest down, those that hardly differ once. */
function distinct(sizes: readonly number[]): number[] {
  const found: number[] = [];
  for (const size of sizes.toSorted((a, b) => b - a))
    if (!found.some((other) => Math.abs(other - size) <= SAME * other)) found.push(size);
  return found;
}

/** How many steps the number of a heading has: 2 for "3.1"; 1 where it has none. */
function stepsOf(text: string): number {
  const label = readLabel(text)?.label;
  return label?.sure && !label.word ? Math.max(1, label.path?.length ?? 1) : 1;
}
