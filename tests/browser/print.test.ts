import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { PAPERS, PX_PER_MM, type PaperName } from '#lib/notes/print/paper.ts';
import { activeTopics } from '#lib/syllabus/tree.ts';
import { type ChromiumDriver, driveChromium } from '#tests/tools/chromium-driver.ts';
import { driveFirefox } from '#tests/tools/firefox-driver.ts';
import { type PageDriver, until } from '#tests/tools/driver.ts';
import { differences } from '#tests/tools/print/compare.ts';
import { KIND_COUNT, type PrintDeck, printDeck } from '#tests/tools/print/decks.ts';
import { pageCount, printedPages } from '#tests/tools/print/printed.ts';
import { putDeck } from '#tests/tools/print/put-deck.ts';
import { type ShownSide, shownSides } from '#tests/tools/print/shown.ts';

const DECKS = 42;
/** `npm run soak` looks at every word of every deck; here, of one of each kind, or of some. */
const isThorough = process.env.EVERY_DECK === '1';
const kinds = (every: number) =>
  Array.from({ length: KIND_COUNT }, (_, seed) => seed).filter((seed) => isThorough || seed % every === 0);
/** The deck of this seed has it. */
const LONGEST_LINE = 6;

/** What the page says of itself, once it says it of this course on this paper. */
const counted = (page: PageDriver, name: string, paper: PaperName, look = 'notes') =>
  until(`the sides of ${name} on ${paper}`, () =>
    page.run(
      (title, wanted, what) => {
        const isThere =
          document.title.startsWith(`${title} `) &&
          document.querySelector('button.main:enabled') !== null &&
          document.querySelector<HTMLSelectElement>('#print-look')!.value === what &&
          document.querySelector<HTMLSelectElement>('#print-paper')!.value === wanted;
        const said = document.querySelector('.print-view [role=status]')?.textContent ?? '';
        // The choice shows at once, what is counted a moment later.
        return isThere && said.includes(wanted === 'a4' ? 'A4' : 'US Letter') && said;
      },
      name,
      paper,
      look,
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

interface Tag {
  number: number;
  /** The column, from the left. */
  across: number;
  baseline: number;
}

/** Where the numbers of the cards stand. */
function tagsOn({ words, columns }: ShownSide): Tag[] {
  const fromLeft = columns.map(({ left }) => left).sort((a, b) => a - b);
  return words
    .filter(({ style, text }) => style === 'print-code' && /^\d+\s/.test(text))
    .map(({ text, lines }) => ({
      number: parseInt(text, 10),
      across: fromLeft.findLastIndex((left) => left <= lines[0]!.left),
      baseline: Math.round(lines[0]!.baseline),
    }));
}

describe('Chromium prints what is counted', () => {
  let driver: ChromiumDriver;

  beforeAll(async () => {
    driver = await driveChromium({ context: { viewport: { width: 1280, height: 900 } } });
    await driver.tab.gotoDesk('#/print');
  });
  afterAll(async () => driver?.close());

  /** Puts a deck and waits until the page shows its notes. */
  async function show(deck: PrintDeck): Promise<void> {
    await putDeck(driver.tab, deck);
    await counted(driver.tab, deck.course.name, 'a4');
  }

  /** How many pages are printed of what the page shows. */
  const countPrinted = async () => pageCount(await driver.page.pdf({ preferCSSPageSize: true }));

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
    `${DECKS} decks on A4 and on Letter: as many pages as sides, and every word in its place`,
    { timeout: 240_000 },
    async () => {
      const counts: Record<PaperName, number>[] = [];
      for (let seed = 0; seed < DECKS; seed++) {
        const deck = printDeck(seed);
        const count = { a4: 0, letter: 0 };
        await show(deck);
        for (const paper of ['a4', 'letter'] as const) {
          await choose(driver.tab, 'print-paper', paper);
          const status = await counted(driver.tab, deck.course.name, paper);
          count[paper] =
            isThorough || seed < KIND_COUNT / 2 ? await checkPrinted(paper) : await countPrinted();
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

  test('a line of 20,000 letters is printed whole, and so it is when it is changed', async () => {
    const deck = printDeck(LONGEST_LINE);
    const line = deck.lines.find(({ rest }) => rest.length > 19_000)!;
    await show(deck);
    const before = await checkPrinted('a4');
    expect(before).toBeGreaterThan(3);
    for (const [name, at, words] of [
      ['longer', 7000, ' some further words about the tides, in the middle of a line'],
      ['longer still', 0, 'At the beginning: '],
      ['shorter', 12_000, ''],
    ] as const) {
      deck.course.name += ` ${name}`;
      line.rest = line.rest.slice(0, at) + words + line.rest.slice(at + (words === '' ? 200 : 0), 19_800);
      await show(deck);
      await checkPrinted('a4');
    }
  });

  test('as many pages with the same words on each, whatever the zoom, the window and the colours of the screen', async () => {
    const worker = await driver.browser.worker();
    const zoom = (factor: number) =>
      worker.evaluate(
        `chrome.tabs.query({}).then((tabs) => Promise.all(tabs.map(({ id }) => chrome.tabs.setZoom(id, ${factor}))))`,
      );
    const looks = [
      { factor: 0.9, width: 1280, colorScheme: 'dark' },
      { factor: 1.25, width: 1280, colorScheme: 'light' },
      { factor: 1, width: 360, colorScheme: 'dark' },
    ] as const;
    try {
      for (const { factor, width, colorScheme } of looks) {
        await zoom(factor);
        await driver.page.setViewportSize({ width, height: 900 });
        await driver.page.emulateMedia({ colorScheme });
        for (const seed of isThorough ? [2, 3] : [3]) {
          const deck = printDeck(seed);
          deck.course.name += ` at ${factor} in ${width}`;
          await show(deck);
          const shown = await shownSides(driver.tab);
          const printed = await printedPages(await driver.page.pdf({ preferCSSPageSize: true }));
          // Lines may move a little on a page that is zoomed or made smaller: places are compared elsewhere.
          const words = shown.map((side) => ({
            ...side,
            words: side.words.map((one) => ({ ...one, lines: [] })),
          }));
          const found = differences(words, printed).filter((one) => !one.includes('outside of its column'));
          expect(found).toEqual([]);
          expect(printed.length).toBeGreaterThan(2);
        }
      }
      // A dark screen prints black on white all the same.
      await driver.page.emulateMedia({ media: 'print', colorScheme: 'dark' });
      const colours = await driver.page.evaluate(() => [
        getComputedStyle(document.querySelector('.print-placed .print-part')!).color,
        getComputedStyle(document.querySelector('.print-page')!).backgroundColor,
        getComputedStyle(document.documentElement).backgroundImage,
      ]);
      expect(colours).toEqual(['rgb(0, 0, 0)', 'rgb(255, 255, 255)', 'none']);
    } finally {
      await zoom(1);
      await driver.page.setViewportSize({ width: 1280, height: 900 });
      await driver.page.emulateMedia({ media: null, colorScheme: null });
    }
  });

  test(
    'to be covered: leads on the left, rests on the right, in their places',
    { timeout: 120_000 },
    async () => {
      for (const seed of kinds(4)) {
        const deck = printDeck(seed);
        await show(deck);
        await choose(driver.tab, 'print-look', 'strip');
        const status = await counted(driver.tab, deck.course.name, 'a4', 'strip');
        const pages = await checkPrinted('a4');
        expect(status).toMatch(new RegExp(`^${pages} sides? of A4\\. Lay a strip`));
        const sides = await shownSides(driver.tab);
        for (const { words, columns } of sides) {
          expect(columns).toHaveLength(1);
          const { left, right } = columns[0]!;
          const edge = left + (right - left) * 0.4;
          for (const { lines, style } of words)
            for (const line of lines) {
              if (style === 'print-rest') expect(line.left).toBeGreaterThan(edge);
              else expect(line.right).toBeLessThan(edge);
            }
        }
      }
    },
  );

  test(
    'questions: the answers stand behind them when the paper is turned over its long edge',
    { timeout: 120_000 },
    async () => {
      for (const seed of kinds(4)) {
        const deck = printDeck(seed);
        const paper = seed % 2 === 0 ? 'a4' : 'letter';
        await show(deck);
        await choose(driver.tab, 'print-paper', paper);
        await choose(driver.tab, 'print-look', 'cards');
        await counted(driver.tab, deck.course.name, paper, 'cards');
        expect((await checkPrinted(paper)) % 2).toBe(0);
        const sides = await shownSides(driver.tab);
        const numbers: number[] = [];
        for (let sheet = 0; sheet < sides.length; sheet += 2) {
          const [front, back] = [tagsOn(sides[sheet]!), tagsOn(sides[sheet + 1]!)];
          numbers.push(...front.map(({ number }) => number));
          const turned = front.map((tag) => ({ ...tag, across: deck.course.columns - 1 - tag.across }));
          const byNumber = (tags: Tag[]) => tags.sort((a, b) => a.number - b.number);
          expect(byNumber(back)).toEqual(byNumber(turned));
        }
        expect(numbers).toEqual(numbers.map((_, i) => i + 1));
        const printed = new Set(activeTopics(deck.topics).map(({ id }) => id));
        expect(numbers).toHaveLength(deck.questions.filter(({ topicId }) => printed.has(topicId)).length);
      }
    },
  );
});

describe('Firefox prints what is counted', () => {
  let driver: Awaited<ReturnType<typeof driveFirefox>>;

  beforeAll(async () => {
    driver = await driveFirefox();
    await driver.firefox.setViewport(1280, 900);
    await driver.tab.gotoDesk('#/print');
  });
  afterAll(async () => driver?.close());

  /** What the browser prints, on the paper that it is told. */
  async function print(paper: PaperName): Promise<Uint8Array> {
    const { width, height } = PAPERS[paper];
    const { value } = await driver.firefox.marionette.send<{ value: string }>('WebDriver:Print', {
      page: { width: width / 10, height: height / 10 },
      margin: { top: 0, bottom: 0, left: 0, right: 0 },
      shrinkToFit: false,
      background: false,
    });
    return Buffer.from(value, 'base64');
  }

  test('as many pages as sides, with every word in its place', { timeout: 240_000 }, async () => {
    for (const seed of kinds(5)) {
      const deck = printDeck(seed);
      const paper = seed % 2 === 0 ? 'a4' : 'letter';
      await putDeck(driver.tab, deck);
      await counted(driver.tab, deck.course.name, 'a4');
      await choose(driver.tab, 'print-paper', paper);
      const status = await counted(driver.tab, deck.course.name, paper);
      const shown = await shownSides(driver.tab);
      const printed = await printedPages(await print(paper));
      // Its formulas are up to a third of a line lower on paper than on the screen, and words after them move up.
      expect(differences(shown, printed, 7)).toEqual([]);
      const name = paper === 'a4' ? 'A4' : 'US Letter';
      expect(status).toMatch(new RegExp(`^${printed.length} sides? of ${name}\\.`));
    }
  });
});
