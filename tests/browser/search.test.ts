import axe, { type AxeResults } from 'axe-core';
import { mkdir, writeFile } from 'node:fs/promises';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { type ChromiumDriver, driveChromium } from '#tests/tools/chromium-driver.ts';
import { type BrowserDriver, click, fill, sees, textOf, until } from '#tests/tools/driver.ts';
import { driveFirefox } from '#tests/tools/firefox-driver.ts';
import { bringInSyllabus } from '#tests/tools/main-job.ts';

const FIELD = 'Search what you kept and wrote';
const LINES = [
  { lead: 'Spring tides', rest: 'come at new moon, and at full moon' },
  { lead: 'Long waves', rest: String.raw`travel at \(c = \sqrt{g h}\), whatever their length` },
  { lead: 'Éstuaries', rest: '<b>funnel</b> the tide 🌊; in Arabic المد' },
];
const QUESTION = { prompt: 'How long is a lunar day?', answer: '24.84 h' };

/** A course with two topics, three note lines and a question under the second. */
async function writeNotes(driver: BrowserDriver): Promise<void> {
  const { tab } = driver;
  await bringInSyllabus(driver, '1 Waves\n2 Tides');
  await click(tab, 'Coverage');
  await click(tab, '2 Tides', '.coverage');
  await sees(tab, 'What the syllabus asks');
  for (const { lead, rest } of LINES) {
    await fill(tab, 'Lead', lead, '.write-line');
    await fill(tab, 'Rest', rest, '.write-line');
    await click(tab, 'Add the line');
    await until('the line in the list', () =>
      tab.run(
        (wanted) =>
          [...document.querySelectorAll('.items li')].some((one) => one.textContent.includes(wanted)),
        lead,
      ),
    );
  }
  await fill(tab, 'Question', QUESTION.prompt, '.write-question');
  await fill(tab, 'Answer', QUESTION.answer, '.write-question');
  await click(tab, 'Add the question');
  await sees(tab, QUESTION.prompt);
}

const empty = (driver: BrowserDriver) => fill(driver.tab, FIELD, '');

describe.each([
  ['Chromium', driveChromium],
  ['Firefox', driveFirefox],
] as const)('search in %s', (_name, drive) => {
  let driver: BrowserDriver;
  const tab = () => driver.tab;
  const marks = () => tab().run(() => [...document.querySelectorAll('mark')].map((one) => one.innerText));

  beforeAll(async () => {
    driver = await drive();
    await writeNotes(driver);
  });
  afterAll(async () => driver?.close());

  test('by keyboard: typed letter by letter, down into the results, opened at the item, and back', async () => {
    await click(tab(), 'Search', '.margin');
    await sees(tab(), 'Passages, your own words');
    // The field has the focus by itself.
    await tab().type('tid');
    await sees(tab(), '2 things found');
    await tab().type('es');
    await sees(tab(), '2 note lines');
    expect(await marks()).toEqual(
      ['tides', 'tide'].map((one) => expect.stringMatching(new RegExp(one, 'i'))),
    );
    // What looks like markup is words.
    expect(await textOf(tab())).toContain('<b>funnel</b>');
    await tab().press('ArrowDown');
    await tab().press('Enter');
    await sees(tab(), 'What the syllabus asks');
    await until('the line to have the focus', () =>
      tab().run(
        () =>
          document.activeElement?.textContent.includes('Spring tides') &&
          document.activeElement.tagName === 'LI',
      ),
    );
    await tab().run(() => history.back());
    await sees(tab(), '2 things found');
    expect(await tab().run(() => document.querySelector<HTMLInputElement>('#search-field')!.value)).toBe(
      'tides',
    );
    await empty(driver);
  });

  test.each([
    ['a misspelling', 'tieds ', '2 things found'],
    ['another form', 'wave ', '1 thing found'],
    ['a command of TeX', 'sqrt', '1 thing found'],
    ['without accents', 'estuaries', '1 thing found'],
    ['a number with its unit', '24.84 h', '1 thing found'],
    ['an emoji', '🌊', '1 thing found'],
    ['words from right to left', 'المَد', '1 thing found'],
    ['words in quotes', '"full moon"', '1 thing found'],
    [
      'words of which nothing holds all',
      'lunar estuaries',
      'Nothing holds all these words. 2 things hold some of them.',
    ],
    ['little words only', 'at and ', '1 thing found'],
    ['what is not there', 'seiche', 'Nothing found for “seiche”.'],
    ['ten thousand characters', 'moon '.repeat(2000), '1 thing found'],
  ])('it answers %s', async (_what, text, said) => {
    await tab().gotoDesk('#/search');
    await sees(tab(), 'Passages, your own words');
    await fill(tab(), FIELD, text);
    await sees(tab(), said);
  });

  test('punctuation alone is no search', async () => {
    await fill(tab(), FIELD, '?! … ()');
    await until('nothing said', () =>
      tab().run(() => document.querySelector('main [role="status"]')!.textContent === ''),
    );
  });

  test('a formula that was found is drawn, and marked whole', async () => {
    await fill(tab(), FIELD, 'sqrt');
    await until('the formula', () => tab().run(() => document.querySelector('mark math msqrt') !== null));
  });

  test('narrowed down to a topic without notes it finds nothing, and offers to drop that', async () => {
    await fill(tab(), FIELD, 'moon');
    await sees(tab(), '1 thing found');
    await click(tab(), 'Narrow it down');
    await tab().run(() => {
      const labels = [...document.querySelectorAll<HTMLLabelElement>('.search-filters label')];
      (labels.find((one) => one.textContent === 'Topic')!.control as HTMLElement).focus();
    });
    await tab().type('1 Waves');
    await tab().press('Enter');
    await sees(tab(), 'Nothing found for “moon”.');
    await click(tab(), 'Search without these limits');
    await sees(tab(), '1 thing found');
  });

  test('in the popup, where each result leads to the desk', async () => {
    const popup = await tab().openPopup();
    await sees(popup, 'Open the desk');
    await click(popup, 'Search');
    await sees(popup, FIELD);
    await popup.type('lunar');
    await sees(popup, '1 thing found');
    const href = await popup.run(() => document.querySelector<HTMLAnchorElement>('.result a')!.href);
    expect(href).toMatch(/desk\.html#\/topic\/[\w-]+\/[\w-]+$/);
    await popup.close();
  });

  test('an open search follows what another page writes', async () => {
    await tab().gotoDesk('#/search?q=seiche');
    await sees(tab(), 'Nothing found for “seiche”.');
    // The page goes on saying what it says where another page can hear it.
    await tab().run(() => {
      setInterval(() => {
        localStorage['said'] = document.querySelector('main [role="status"]')!.textContent;
      }, 50);
      const link = document.createElement('a');
      Object.assign(link, { href: '#/coverage', target: '_blank', rel: 'noopener', textContent: 'Apart' });
      document.querySelector('main')!.append(link);
    });
    const saidBefore = () => tab().run(() => localStorage['said'] as string);
    await click(tab(), 'Apart');
    await until('the new tab', async () => {
      await driver.toNewestTab();
      return tab().run(() => location.hash === '#/coverage');
    });
    await click(tab(), '2 Tides', '.coverage');
    await sees(tab(), 'What the syllabus asks');
    expect(await saidBefore()).toBe('Nothing found for “seiche”.');
    await fill(tab(), 'Lead', 'Seiche', '.write-line');
    await fill(tab(), 'Rest', 'a standing wave in a basin', '.write-line');
    await click(tab(), 'Add the line');
    await until('the other page to find it', async () => (await saidBefore()) === '1 thing found');
  });
});

const OPTIONS = JSON.stringify({
  runOnly: ['wcag2a', 'wcag2aa', 'wcag21a', 'wcag21aa', 'wcag22aa', 'best-practice'],
  resultTypes: ['violations'],
});

describe('axe finds nothing in the search', () => {
  let driver: ChromiumDriver;
  beforeAll(async () => {
    driver = await driveChromium();
    await writeNotes(driver);
  });
  afterAll(async () => driver?.close());

  test.each([
    ['before anything is asked', 'search', 'Passages, your own words'],
    ['with results', 'search?q=tides', '2 things found'],
    ['narrowed down, with nothing found', 'search?q=tides&unclear=1&since=2026-01-01', 'Try fewer words'],
  ])('at the desk, %s', async (name, path, text) => {
    const found: string[] = [];
    for (const width of [360, 1280])
      for (const colorScheme of ['light', 'dark'] as const) {
        await driver.page.setViewportSize({ width, height: 900 });
        await driver.page.emulateMedia({ colorScheme });
        await driver.tab.gotoDesk(`#/${path}`);
        await sees(driver.tab, text);
        await picture(`${name}-${width}-${colorScheme}`, () => driver.tab.screenshot());
        await driver.page.evaluate(axe.source);
        const { violations } = (await driver.page.evaluate(`axe.run(document, ${OPTIONS})`)) as AxeResults;
        found.push(...violations.map(({ id, nodes }) => `${width} ${colorScheme} ${id}: ${nodes[0]!.html}`));
        const spill = await driver.page.evaluate(() => document.documentElement.scrollWidth - innerWidth);
        if (spill > 0) found.push(`${width} ${colorScheme}: ${spill} pixels over the side`);
      }
    expect(found).toEqual([]);
  });

  test('in the popup', async () => {
    const popup = await driver.browser.openToolbarPopup(driver.page);
    await popup.click('.popup-search summary');
    await popup.fill('#search-field', 'moon');
    await popup.waitForSelector('.result');
    for (const colorScheme of ['light', 'dark'] as const) {
      await popup.emulateMedia({ colorScheme });
      await picture(`popup-${colorScheme}`, () => popup.screenshot({ fullPage: true }));
      await popup.evaluate(axe.source);
      const { violations } = (await popup.evaluate(`axe.run(document, ${OPTIONS})`)) as AxeResults;
      expect(violations.map(({ id, nodes }) => `${id}: ${nodes[0]!.html}`)).toEqual([]);
    }
    await popup.close();
  });
});

/** Pictures to look at, where they are wanted. */
async function picture(name: string, take: () => Promise<Buffer>): Promise<void> {
  if (!process.env['PICTURES']) return;
  await mkdir('.output/search', { recursive: true });
  await writeFile(`.output/search/${name.replaceAll(/\W+/g, '-')}.png`, await take());
}
