import { commonSize } from '#lib/capture/pdf/lines.ts';
import type { OutlineRemark } from '../../outline-row.ts';
import type { SpecLine } from './page-lines.ts';

/** Lines to read, and what is said of those left out. */
export interface Sorted {
  lines: SpecLine[];
  remarks: OutlineRemark[];
}

/** Heads and feet stand this near to the top or bottom edge of the page, as a part of its height. */
const TOP = 0.085;
const BOTTOM = 0.92;
/** Heads and feet of one sort stand at the same height on each page, within this many points. */
const SAME_HEIGHT = 4;

const PAGE_NUMBER = /^(?:page\s+|[-–—|]\s*)?(?:\d{1,4}|[ivxl]{1,6})(?:\s*(?:of|\/)\s*\d{1,4}|\s*[-–—|])?$/i;

/** What is set smaller than most letters by this part, at the edge of a page, is no topic. */
const SMALL = 0.93;

/** Lines further from the edges count as heads and feet where they end their pages on this many pages alike. */
const OFTEN = 3;

/**
 * Leaves out page numbers, what stands at the top or foot of several pages, and small print there. Each sort is named
 * once.
 */
export function withoutHeadsAndFeet(lines: readonly SpecLine[]): Sorted {
  const usual = commonSize(lines);
  const ends = endsOfPages(lines, 1.05 * usual);
  const isEdge = ({ down }: SpecLine): boolean => down < TOP || down > BOTTOM;
  const bySort = Map.groupBy(
    lines.filter((line) => isEdge(line) || ends.has(line)),
    ({ text }) => sortOf(text),
  );
  const out = new Map<SpecLine, OutlineRemark['about']>();
  for (const [, alike] of bySort)
    for (const line of alike) {
      const pages = new Set(
        alike
          .filter(({ baseline }) => Math.abs(baseline - line.baseline) < SAME_HEIGHT)
          .map(({ page }) => page),
      );
      if (!isEdge(line) && pages.size < OFTEN) continue;
      if (PAGE_NUMBER.test(line.text)) out.set(line, 'page-number');
      else if (pages.size > 1) out.set(line, 'running-head');
      else if (line.size < SMALL * usual) out.set(line, 'small-print');
    }
  return parted(lines, out, ({ text }, about) => (about === 'page-number' ? about : sortOf(text)));
}

/** The highest and the lowest line of each page, where they are set no larger than most. */
function endsOfPages(lines: readonly SpecLine[], largest: number): Set<SpecLine> {
  const ends = new Set<SpecLine>();
  for (const [, all] of Map.groupBy(lines, ({ page }) => page)) {
    const first = all.reduce((best, line) => (line.baseline < best.baseline ? line : best));
    const last = all.reduce((best, line) => (line.baseline > best.baseline ? line : best));
    for (const line of [first, last]) if (line.size <= largest) ends.add(line);
  }
  return ends;
}

/** Page numbers and the like, in either numerals, differ from page to page. */
const sortOf = (text: string): string =>
  text
    .toLowerCase()
    .replace(/\d+/g, '#')
    .replace(/^[ivxl]+(?=\s|$)|(?<=\s)[ivxl]+$/g, '#')
    .replace(/\s+/g, ' ');

const LEADERS = /(?:\.\s?){4,}\s*(?:\d{1,4}|[ivxl]{1,6})$|…\s*\d{1,4}$/i;
const CONTENTS = /^(?:table of )?contents(?: page)?$/i;
const ENDS_IN_NUMBER = /\s(?:\d{1,4}|[ivxl]{1,6})$/i;

/** Leaves out tables of contents: dotted lines, and what follows "Contents" and ends in a page number. */
export function withoutContents(lines: readonly SpecLine[]): Sorted {
  const out = new Map<SpecLine, OutlineRemark['about']>();
  let inside = false;
  lines.forEach((line, i) => {
    const isEntry = LEADERS.test(line.text) || (inside && isContentsEntry(line));
    if (CONTENTS.test(line.text) && [1, 2, 3].some((step) => isListed(lines[i + step]))) inside = true;
    else if (!isEntry) inside &&= isListed(lines[i + 1]) || isListed(lines[i + 2]);
    if (isEntry || inside) out.set(line, 'contents');
  });
  return parted(lines, out, ({ page }) => String(page));
}

const isContentsEntry = (line: SpecLine): boolean => ENDS_IN_NUMBER.test(line.text) && line.endsApart;
const isListed = (line: SpecLine | undefined): boolean =>
  line !== undefined && (LEADERS.test(line.text) || isContentsEntry(line));

/** Parts the lines that stay from those that are out, of which one of each sort is named. */
function parted(
  lines: readonly SpecLine[],
  out: ReadonlyMap<SpecLine, OutlineRemark['about']>,
  sort: (line: SpecLine, about: OutlineRemark['about']) => string,
): Sorted {
  const named = new Set<string>();
  const remarks: OutlineRemark[] = [];
  for (const [line, about] of out) {
    const key = sort(line, about);
    if (!named.has(key)) remarks.push({ line: line.line, page: line.page, about, text: line.text });
    named.add(key);
  }
  return { lines: lines.filter((line) => !out.has(line)), remarks };
}
