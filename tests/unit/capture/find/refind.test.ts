// @vitest-environment jsdom
import { describe, expect, it } from 'vitest';
import { type RangeSelectors, describeRange } from '#lib/capture/find/describe-range.ts';
import { findPassage } from '#lib/capture/find/find-passage.ts';
import { type PageText, readPageText } from '#lib/capture/find/page-text.ts';
import { type Level, type Tally, proseOf, tryPage } from './refind/experiment.ts';
import { readChapter } from './refind/pages.ts';

// The short chapters: the whole experiment, in a real browser and beside a library, is in the bench.
const chapters = await Promise.all(
  ['identification', 'technical', 'calculus/inverselaplace'].map(readChapter),
);
const parse = (html: string): Document => new DOMParser().parseFromString(html, 'text/html');
const prose = chapters.map((html) => proseOf(parse(html)));

const pages = new WeakMap<Node, PageText>();
const ours = {
  describe: describeRange,
  find(root: Element, selectors: RangeSelectors): Range | null {
    const page = pages.get(root) ?? readPageText(root);
    pages.set(root, page);
    return findPassage(page, selectors)?.range ?? null;
  },
};

function tryLevel(level: Level): Tally {
  const sum: Tally = { right: 0, part: 0, wrong: 0, none: 0 };
  for (const [seed, html] of chapters.entries()) {
    const strangers = prose.filter((_, other) => other !== seed).flat();
    const tally = tryPage({ html, level, seed, strangers, parse }, { ours }).ours;
    for (const key of Object.keys(sum) as (keyof Tally)[]) sum[key] += tally[key];
  }
  return sum;
}

describe('passages of real pages are found again', { timeout: 60_000 }, () => {
  it.each(['words', 'paragraphs', 'markup', 'characters'] as const)('after changes to %s', (level) => {
    const sum = tryLevel(level);
    const all = sum.right + sum.part + sum.wrong + sum.none;
    expect(all).toBeGreaterThan(80);
    expect(sum.right / all).toBeGreaterThanOrEqual(0.97);
    if (level === 'words') expect(sum.wrong).toBe(0);
  });

  it('with no place for those that are gone, but where the page says nearly the same again', () => {
    const { right, part, wrong } = tryLevel('gone');
    expect(part).toBe(0);
    expect(wrong / (right + wrong)).toBeLessThan(0.01);
  });
});
