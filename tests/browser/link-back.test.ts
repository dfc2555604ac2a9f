import { afterAll, beforeAll, expect, test } from 'vitest';
import { type Chapters, serveChapters } from '#tests/tools/chapters.ts';
import { driveChromium } from '#tests/tools/chromium-driver.ts';
import { type BrowserDriver, click, sees, select, until } from '#tests/tools/driver.ts';
import { driveFirefox } from '#tests/tools/firefox-driver.ts';
import { bringInSyllabus } from '#tests/tools/main-job.ts';
import { lookAtSlip } from '#tests/tools/slip-look.ts';

/** How a paragraph of prose and formulas begins, far down in the chapter. */
const BEGINNING = 'There are actually infinitely many formulas';

let pages: Chapters;

beforeAll(async () => {
  pages = await serveChapters(['identification']);
});
afterAll(() => pages?.close());

/** Where the paragraph stands, as a CSS selector, and how far from the top of the page. */
function placeOf(beginning: string): { css: string; depth: number } {
  const paragraph = [...document.querySelectorAll('p')].find((p) => p.textContent.startsWith(beginning))!;
  const steps: string[] = [];
  for (let at: Element = paragraph; at.parentElement; at = at.parentElement)
    steps.unshift(`:nth-child(${[...at.parentElement.children].indexOf(at) + 1})`);
  return { css: `html > ${steps.join(' > ')}`, depth: paragraph.getBoundingClientRect().top + scrollY };
}

test.each([
  ['Chromium', driveChromium],
  ['Firefox', driveFirefox],
] as const)(
  'the link of a clip opens its page at the passage in %s, on a site where nothing of the extension runs',
  async (_name, drive) => {
    const driver: BrowserDriver = await drive();
    try {
      const { tab } = driver;
      await bringInSyllabus(driver, '1 Waves\n2 Tides');
      await tab.goto(`${pages.origin}/identification`);
      const { css, depth } = await tab.run(placeOf, BEGINNING);
      expect(depth).toBeGreaterThan(3000);
      await select(tab, css);
      await tab.openSlip();
      await until('the slip', async () => (await lookAtSlip(tab))?.focus === 'own-words');
      await tab.press('Enter');
      await until('it to be kept', async () => (await lookAtSlip(tab))?.text.startsWith('Kept'));
      await tab.gotoDesk('#/clips');
      await click(tab, BEGINNING);
      await sees(tab, 'kept on');
      await click(tab, 'Number identification', '.provenance');
      await sees(tab, 'Your copy stays here');
      await until('the page to open', async () => {
        await driver.toNewestTab();
        return driver.tab.run(() => location.pathname === '/identification');
      });
      await until('the page to be scrolled to the passage', () =>
        driver.tab.run((selector) => {
          const { top } = document.querySelector(selector)!.getBoundingClientRect();
          return scrollY > 1000 && top >= 0 && top < innerHeight;
        }, css),
      );
    } finally {
      await driver.close();
    }
  },
);
