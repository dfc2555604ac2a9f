import type { Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { textFragment } from '#lib/capture/links/text-fragment.ts';
import { type Chapters, serveChapters } from '#tests/tools/chapters.ts';
import { type ExtensionBrowser, launchChromium } from '#tests/tools/chromium.ts';

const CHAPTERS = ['technical', 'identification', 'calculus/inverselaplace', 'functions/bessel'];

interface Paragraph {
  index: number;
  exact: string;
  prefix: string;
  suffix: string;
}

let pages: Chapters;
let origin: string;
let browser: ExtensionBrowser;
let page: Page;

beforeAll(async () => {
  pages = await serveChapters(CHAPTERS);
  origin = pages.origin;
  browser = await launchChromium();
  page = await browser.context.newPage();
});

afterAll(async () => {
  await browser?.close();
  await pages.close();
});

/** Paragraphs of prose further down than the window reaches, with what stands beside each in the text of the body. */
function paragraphsBelow(): Paragraph[] {
  const text = document.body.textContent!;
  return [...document.querySelectorAll('p')].flatMap((element, index) => {
    const exact = element.textContent!;
    const isLow = element.getBoundingClientRect().top > 2 * innerHeight;
    if (!isLow || exact.replace(/\s+/g, ' ').length < 60) return [];
    const before = document.createRange();
    before.setStart(document.body, 0);
    before.setEndBefore(element);
    const start = before.toString().length;
    const end = start + exact.length;
    return [{ index, exact, prefix: text.slice(start - 64, start), suffix: text.slice(end, end + 64) }];
  });
}

/** Opens an address afresh and tells how far it scrolled and which paragraphs begin in the window. */
async function open(url: string): Promise<{ scrolled: number; shown: number[] }> {
  await page.goto(`${origin}/empty`);
  await page.goto(url);
  return page.evaluate(() => {
    const shown = [...document.querySelectorAll('p')].flatMap((element, index) => {
      const { top } = element.getBoundingClientRect();
      return top >= 0 && top < innerHeight ? [index] : [];
    });
    return { scrolled: scrollY, shown };
  });
}

describe('text fragments in Chromium', () => {
  test.each(CHAPTERS)('lead to paragraphs of %s', async (chapter) => {
    const url = `${origin}/${chapter}`;
    await page.goto(url);
    const all = await page.evaluate(paragraphsBelow);
    // Some paragraphs of the manual stand in it many times, with the same lines around them.
    const once = all.filter(({ exact }) => all.filter((other) => other.exact === exact).length === 1);
    const some = once.filter((_, place) => place % Math.ceil(once.length / 10) === 0);
    expect(some.length).toBeGreaterThanOrEqual(6);
    const missed: string[] = [];
    for (const { index, exact, prefix, suffix } of some) {
      const link = textFragment(url, { type: 'TextQuoteSelector', exact, prefix, suffix });
      const { scrolled, shown } = await open(link);
      if (scrolled === 0 || !shown.includes(index)) missed.push(link.slice(url.length));
    }
    expect(missed).toEqual([]);
  });

  test('lead to the right one of equal words by what stands beside them', async () => {
    const url = `${origin}/functions/bessel`;
    await page.goto(url);
    const headings = await page.evaluate(() => {
      const text = document.body.textContent!;
      const last = text.lastIndexOf('References');
      return { prefix: text.slice(last - 64, last), suffix: text.slice(last + 10, last + 74) };
    });
    const quote = { type: 'TextQuoteSelector' as const, exact: 'References', ...headings };
    await open(textFragment(url, quote));
    const place = await page.evaluate(() => {
      const all = [...document.querySelectorAll('strong, h1, h2, h3, p')].filter((element) =>
        element.textContent!.startsWith('References'),
      );
      const { top } = all.at(-1)!.getBoundingClientRect();
      return { count: all.length, isShown: top >= 0 && top < innerHeight };
    });
    expect(place.count).toBeGreaterThan(2);
    expect(place.isShown).toBe(true);
  });

  test('lead nowhere when the passage is gone', async () => {
    const exact = 'No such sentence about tidal waves was ever written on this page of the manual.';
    const url = textFragment(`${origin}/technical`, { type: 'TextQuoteSelector', exact });
    expect((await open(url)).scrolled).toBe(0);
  });
});
