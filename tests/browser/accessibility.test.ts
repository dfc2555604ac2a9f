import axe, { type AxeResults } from 'axe-core';
import type { Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { type ChromiumDriver, driveChromium, inExtensionWorld } from '#tests/tools/chromium-driver.ts';
import { demoPages } from '#tests/tools/demo/pages.ts';
import { startLearningPages } from '#tests/tools/demo/server.ts';
import { click, fill, select, sees, until } from '#tests/tools/driver.ts';
import { doMainJob } from '#tests/tools/main-job.ts';
import { aTaughtCourse, packed } from '#tests/unit/exchange/a-pack.ts';
import { clickOnSlip } from '#tests/tools/keep-from-popup.ts';
import { rowsIn } from '#tests/tools/rows.ts';
import { lookAtSlip } from '#tests/tools/slip-look.ts';

const OPTIONS = JSON.stringify({
  runOnly: ['wcag2a', 'wcag2aa', 'wcag21a', 'wcag21aa', 'wcag22aa', 'best-practice'],
  resultTypes: ['violations'],
});

const told = (results: AxeResults) =>
  results.violations.map(
    ({ id, nodes }) => `${id}: ${nodes.map(({ html }) => html.slice(0, 160)).join(' | ')}`,
  );

async function violations(page: Page): Promise<string[]> {
  await page.evaluate(axe.source);
  return told((await page.evaluate(`axe.run(document, ${OPTIONS})`)) as AxeResults);
}

const WIDTHS = [360, 1280];
const SCHEMES = ['light', 'dark'] as const;

describe('axe finds nothing', () => {
  let driver: ChromiumDriver;
  let pages: Awaited<ReturnType<typeof startLearningPages>>;
  let ids: { clip: string; topic: string };

  beforeAll(async () => {
    pages = await startLearningPages();
    driver = await driveChromium();
    await doMainJob(driver, { origin: pages.origin, pages: 2 });
    await driver.tab.gotoDesk('#/clips');
    await sees(driver.tab, 'All (2)');
    ids = await driver.page.evaluate(() => {
      const clip = document.querySelector<HTMLAnchorElement>('.excerpt')!.hash.split('/').pop()!;
      return { clip, topic: '' };
    });
    await driver.tab.gotoDesk('#/coverage');
    await sees(driver.tab, 'What to do');
    ids.topic = await driver.page.evaluate(() =>
      document.querySelector<HTMLAnchorElement>('.coverage th a')!.hash.split('/').pop()!,
    );
  }, 120_000);
  afterAll(async () => {
    await driver?.close();
    await pages?.close();
  });

  /** Looks at what the page shows in both schemes and at both widths. Nothing may spill over the side either. */
  async function everyLook(page: Page): Promise<string[]> {
    const found: string[] = [];
    for (const width of WIDTHS)
      for (const colorScheme of SCHEMES) {
        await page.setViewportSize({ width, height: 900 });
        await page.emulateMedia({ colorScheme });
        found.push(...(await violations(page)).map((one) => `${width} ${colorScheme} ${one}`));
        const spill = await page.evaluate(() => document.documentElement.scrollWidth - innerWidth);
        if (spill > 0) found.push(`${width} ${colorScheme}: ${spill} pixels over the side`);
      }
    await page.setViewportSize({ width: 1280, height: 720 });
    return found;
  }

  test.each([
    ['coverage', () => '#/coverage', 'What to do'],
    ['clips', () => '#/clips', 'All (2)'],
    ['clip', () => `#/clip/${ids.clip}`, 'Questions from this clip'],
    ['topic', () => `#/topic/${ids.topic}`, 'What the syllabus asks'],
    ['notes', () => '#/notes', 'Stands out'],
    ['a topic being read', () => `#/read/${ids.topic}`, 'clips understood'],
    ['a topic being condensed', () => `#/condense/${ids.topic}`, 'Add a line'],
    ['round', () => '#/round', 'Gains most now'],
    ['syllabus', () => '#/syllabus', 'Bring in a newer version'],
    ['course', () => '#/course', 'Length of a round'],
    ['set aside', () => '#/aside', 'Set aside'],
    ['progress report', () => '#/report', 'Secured topics'],
  ])('on the desk: %s', async (_name, hash, text) => {
    await driver.tab.gotoDesk(hash());
    await sees(driver.tab, text);
    // What is folded away is looked at as well.
    await driver.page.evaluate(() =>
      document.querySelectorAll('details').forEach((one) => (one.open = true)),
    );
    expect(await everyLook(driver.page)).toEqual([]);
  });

  test('on the desk: a syllabus being put right', async () => {
    await driver.tab.gotoDesk('#/syllabus');
    await sees(driver.tab, 'Bring in a newer version');
    await fill(driver.tab, 'Syllabus', '1 Waves\n1.1 Swell\n1.1 Seiches\n1.1.1.1 State what a node is.');
    await click(driver.tab, 'Read it');
    await sees(driver.tab, 'nothing is saved yet');
    await driver.page.locator('.tree-row').nth(1).click();
    expect(await everyLook(driver.page)).toEqual([]);
  });

  test('on the desk: lessons entered, overdue and being changed', async () => {
    await driver.tab.gotoDesk('#/lessons');
    for (const [title, day] of [
      ['Orbits of water', '2026-01-05'],
      ['A_title_that_breaks_nowhere_'.repeat(6), '2030-01-05'],
    ] as const) {
      await fill(driver.tab, 'Title', title);
      await fill(driver.tab, 'From whom', 'Tide teacher');
      await fill(driver.tab, 'By when', day);
      await driver.tab.press('Enter');
      await sees(driver.tab, `Added: ${title}`);
    }
    await sees(driver.tab, 'Overdue');
    await click(driver.tab, 'Change: Orbits of water');
    expect(await everyLook(driver.page)).toEqual([]);
  });

  test('on the desk: a clip that is unclear, and lines with one in hand', async () => {
    const clip = (await rowsIn(driver.tab, 'clips')).find(({ id }) => id === ids.clip)!;
    await driver.tab.gotoDesk(`#/read/${clip.topicIds[0]}`);
    await sees(driver.tab, 'clips understood');
    await driver.page.getByLabel('Unclear: I must come back to it').first().click();
    await sees(driver.tab, 'What made it clear?');
    const first = await driver.page.locator('.read-card').first().getAttribute('aria-label');
    const { text } = (await rowsIn(driver.tab, 'clips')).find((one) => one.text.startsWith(first!))!;
    await fill(driver.tab, 'In your own words', text);
    await sees(driver.tab, 'These words stand in the passage');
    expect(await everyLook(driver.page)).toEqual([]);
    await driver.tab.gotoDesk(`#/condense/${clip.topicIds[0]}`);
    await click(driver.tab, 'Make lines of it');
    await click(driver.tab, 'Add a line');
    await driver.tab.type(String.raw`Broken: \(\frac{a\) and ${'unbroken'.repeat(30)}`);
    await sees(driver.tab, 'does not parse');
    await click(driver.tab, 'Write the question');
    expect(await everyLook(driver.page)).toEqual([]);
  });

  test('on the desk: a course pack being looked at', async () => {
    await driver.tab.gotoDesk('#/course');
    await driver.page.setInputFiles('#pack-file', {
      name: 'x.json',
      mimeType: '',
      buffer: Buffer.from('{}'),
    });
    await sees(driver.tab, 'This file is not a course pack');
    const pack = packed(aTaughtCourse());
    const buffer = Buffer.from(JSON.stringify(pack));
    await driver.page.setInputFiles('#pack-file', { name: 'pack.json', mimeType: '', buffer });
    await sees(driver.tab, 'This is a new course.');
    await driver.page.evaluate(() =>
      document.querySelectorAll('details').forEach((one) => (one.open = true)),
    );
    expect(await everyLook(driver.page)).toEqual([]);
  });

  test('on the desk: sheets to be printed', async () => {
    await driver.tab.gotoDesk('#/print');
    for (const [look, text] of [
      ['notes', 'You aim at'],
      ['strip', 'Lay a strip'],
      ['cards', 'printed on both sides'],
    ]) {
      await driver.page.selectOption('#print-look', look!);
      await sees(driver.tab, text!);
      expect(await everyLook(driver.page)).toEqual([]);
    }
  });

  test('in a round, asked, uncovered and ended', async () => {
    await driver.tab.gotoDesk('#/round');
    await click(driver.tab, 'Start a');
    await sees(driver.tab, 'Uncover');
    expect(await everyLook(driver.page)).toEqual([]);
    await driver.tab.type('my answer');
    await driver.tab.press('Enter');
    await sees(driver.tab, 'How many marks?');
    expect(await everyLook(driver.page)).toEqual([]);
    await click(driver.tab, 'Stop here');
    await sees(driver.tab, 'Nothing marked this time');
    expect(await everyLook(driver.page)).toEqual([]);
  });

  test('in a round on weak topics, with a line uncovered in steps and marks that are suggested', async () => {
    await driver.tab.gotoDesk('#/round');
    await sees(driver.tab, 'What practice brings');
    await driver.page.selectOption('#round-scope', 'weak');
    await driver.page.selectOption('#round-order', 'forward');
    expect(await everyLook(driver.page)).toEqual([]);
    await driver.page.selectOption('#round-scope', 'all');
    await click(driver.tab, 'Start a');
    await sees(driver.tab, 'steps covered');
    await driver.tab.press('Space');
    await driver.page.click('details summary');
    expect(await everyLook(driver.page)).toEqual([]);
    await driver.page.focus('.steps');
    await driver.tab.press('Enter');
    await sees(driver.tab, 'Suggested: Part');
    expect(await everyLook(driver.page)).toEqual([]);
    await driver.tab.press('Enter');
    await until('the next item', () => driver.tab.run(() => document.querySelector('.marks') === null));
  });

  test('on the desk: how a topic is being forgotten, and one of its items', async () => {
    await driver.tab.gotoDesk(`#/clip/${ids.clip}`);
    await click(driver.tab, 'How it is being forgotten');
    await until('the curve', () => driver.tab.run(() => document.querySelector('.chart .curve') !== null));
    expect(await everyLook(driver.page)).toEqual([]);
    await driver.page.click('.margin a[href="#/coverage"]');
    await sees(driver.tab, 'What to do');
    const recalled = driver.page.locator('.coverage tr', { hasText: 'Recall it again' }).locator('th a');
    await recalled.first().click();
    await sees(driver.tab, 'How it is being forgotten');
    expect(await everyLook(driver.page)).toEqual([]);
  });

  test('in the popup', async () => {
    await driver.tab.goto(pages.origin + demoPages[0]!.path);
    const popup = await driver.browser.openToolbarPopup(driver.page);
    await popup.waitForSelector('.gaps');
    for (const colorScheme of SCHEMES) {
      await popup.emulateMedia({ colorScheme });
      expect(await violations(popup)).toEqual([]);
    }
    await popup.click('text=Choose another round');
    await popup.waitForSelector('#round-scope');
    for (const colorScheme of SCHEMES) {
      await popup.emulateMedia({ colorScheme });
      expect(await violations(popup)).toEqual([]);
    }
    await popup.close();
  });

  /** What axe finds in a closed root: it looks into none, so it is shown a copy, style and all, in an open one. */
  async function inClosedRoot(host: 'plumbline-slip' | 'plumbline-frame'): Promise<string[]> {
    const copy = `const host = document.querySelector('${host}');
      const closed = chrome.dom.openOrClosedShadowRoot(host);
      const copy = document.body.appendChild(document.createElement('div'));
      const root = copy.attachShadow({ mode: 'open' });
      root.adoptedStyleSheets = closed.adoptedStyleSheets;
      root.append(...[...closed.children].map((child) => child.cloneNode(true)));
      host.remove();`;
    const script = `${axe.source}; (async () => { ${copy} return axe.run(copy, ${OPTIONS}); })()`;
    return told((await inExtensionWorld(driver.browser, driver.page, script)) as AxeResults);
  }

  /** What it finds after `open` on a demo page, narrow and wide, light and dark. */
  async function inEveryLook(
    host: 'plumbline-slip' | 'plumbline-frame',
    path: string,
    open: () => Promise<void>,
  ) {
    const found: string[] = [];
    for (const width of WIDTHS)
      for (const colorScheme of SCHEMES) {
        await driver.page.setViewportSize({ width, height: 800 });
        await driver.page.emulateMedia({ colorScheme });
        await driver.tab.goto(pages.origin + path);
        await open();
        found.push(...(await inClosedRoot(host)));
      }
    return found;
  }

  const openSlipOn = async (css: string) => {
    await select(driver.tab, css);
    await driver.tab.openSlip();
    await until('the slip', async () => (await lookAtSlip(driver.tab))?.focus === 'own-words');
  };

  test('on the slip, open', async () => {
    const { path, passageSelector } = demoPages[2]!;
    expect(await inEveryLook('plumbline-slip', path, () => openSlipOn(passageSelector))).toEqual([]);
  });

  test('on the slip, widened to parts with pictures', async () => {
    const widen = async () => {
      await openSlipOn('#with-pictures p');
      await clickOnSlip(driver, '.scopes button');
      await until('the parts', () =>
        driver.tab.inSlip((root) => root!.querySelectorAll('.parts input').length > 2),
      );
    };
    expect(await inEveryLook('plumbline-slip', '/ebbledore/wave-pictures', widen)).toEqual([]);
  });

  test('on the slip, kept', async () => {
    const keep = async () => {
      await openSlipOn('#with-pictures p');
      await driver.tab.press('Enter');
      await until('it to be kept', async () => (await lookAtSlip(driver.tab))?.text.startsWith('Kept'));
    };
    expect(await inEveryLook('plumbline-slip', '/ebbledore/wave-pictures', keep)).toEqual([]);
  });

  test('on the frame around a diagram', async () => {
    const frame = async () => {
      const popup = await driver.tab.openPopup();
      await click(popup, 'Frame a diagram');
      await until('the frame', () => driver.tab.run(() => !!document.querySelector('plumbline-frame')));
    };
    expect(await inEveryLook('plumbline-frame', '/ebbledore/wave-pictures', frame)).toEqual([]);
  });

  test('on the desk: a newer version of a syllabus, with all that is said of it, and what is left after it', async () => {
    await driver.tab.gotoDesk('#/syllabus');
    await sees(driver.tab, 'Bring in a newer version');
    await fill(
      driver.tab,
      'Syllabus',
      '1 Sea water (80 %)\n1.1 Salinity (HL only)\n1.1 Density\n\nPage 3 of 9\n\n2 Buoyancy and flotation (50 %)\n3 Ice',
    );
    await click(driver.tab, 'Read it');
    await sees(driver.tab, 'What this version changes');
    await driver.page.evaluate(() =>
      document.querySelectorAll('details').forEach((one) => (one.open = true)),
    );
    expect(await everyLook(driver.page)).toEqual([]);
    await click(driver.tab, 'Save the syllabus');
    await sees(driver.tab, 'Left from topics that were dropped');
    expect(await everyLook(driver.page)).toEqual([]);
  });
});
