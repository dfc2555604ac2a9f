import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { PAPERS, PX_PER_MM, type PaperName } from '#lib/notes/print/paper.ts';
import { type ChromiumDriver, driveChromium } from '#tests/tools/chromium-driver.ts';
import { type PageDriver, until } from '#tests/tools/driver.ts';
import { differences } from '#tests/tools/print/compare.ts';
import { printDeck } from '#tests/tools/print/decks.ts';
import { printedPages } from '#tests/tools/print/printed.ts';
import { putDeck } from '#tests/tools/print/put-deck.ts';
import { shownSides } from '#tests/tools/print/shown.ts';

const DECKS = 42;

/** What the page says of itself, once it says it of this course on this paper. */
const counted = (page: PageDriver, name: string, paper: PaperName) =>
  until(`the sides of ${name} on ${paper}`, () =>
    page.run(
      (title, wanted) => {
        const isThere =
          document.title.startsWith(`${title} `) &&
          document.querySelector('button.main:enabled') !== null &&
          document.querySelector<HTMLSelectElement>('#print-paper')!.value === wanted;
        return isThere && document.querySelector('[role=status]')!.textContent;
      },
      name,
      paper,
    ),
  );

const choose = (page: PageDriver, id: string, value: string) =>
  until(`a choice ${id}`, () =>
    page.run(
      (field, chosen) => {
        const select = document.querySelector<HTMLSelectElement>(`#${field}`);
        if (!select) return false;
        select.value = chosen;
        return select.dispatchEvent(new Event('change', { bubbles: true }));
      },
      id,
      value,
    ),
  );

describe('Chromium prints what is counted', () => {
  let driver: ChromiumDriver;

  beforeAll(async () => {
    driver = await driveChromium({ context: { viewport: { width: 1280, height: 900 } } });
    await driver.tab.gotoDesk('#/print');
  });
  afterAll(async () => driver?.close());

  /** Prints what the page shows and compares it, page by page; gives how many pages there are. */
  async function checkPrinted(paper: PaperName): Promise<number> {
    const shown = await shownSides(driver.tab);
    const printed = await printedPages(await driver.page.pdf({ preferCSSPageSize: true }));
    expect(differences(shown, printed)).toEqual([]);
    for (const { width, height } of printed) {
      // Chromium gives paper in whole pixels.
      expect(Math.abs(width - PAPERS[paper].width * PX_PER_MM)).toBeLessThan(1);
      expect(Math.abs(height - PAPERS[paper].height * PX_PER_MM)).toBeLessThan(1);
    }
    return printed.length;
  }

  test(
    `${DECKS} decks on A4 and on Letter: as many pages as sides, with every word in its place`,
    { timeout: 240_000 },
    async () => {
      const counts: Record<PaperName, number>[] = [];
      for (let seed = 0; seed < DECKS; seed++) {
        const deck = printDeck(seed);
        const count = { a4: 0, letter: 0 };
        await putDeck(driver.tab, deck);
        for (const paper of ['a4', 'letter'] as const) {
          await choose(driver.tab, 'print-paper', paper);
          const status = await counted(driver.tab, deck.course.name, paper);
          count[paper] = await checkPrinted(paper);
          const name = paper === 'a4' ? 'A4' : 'US Letter';
          expect(status).toContain(
            count[paper] === 1 ? `1 side of ${name}.` : `${count[paper]} sides of ${name}.`,
          );
        }
        counts.push(count);
      }
      expect(counts).toHaveLength(DECKS);
      // They are varied indeed.
      expect(new Set(counts.map(({ a4 }) => a4)).size).toBeGreaterThan(8);
      expect(counts.some(({ a4, letter }) => a4 !== letter)).toBe(true);
    },
  );
});
