import { createServer } from 'node:http';
import type { AddressInfo } from 'node:net';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import type { Browser } from 'wxt/browser';
import { type ChromiumDriver, driveChromium } from '#tests/tools/chromium-driver.ts';
import { PATTERN, patternColour, patternPng } from '#tests/tools/demo/pattern.ts';
import { startLearningPages } from '#tests/tools/demo/server.ts';
import { drag } from '#tests/tools/drag.ts';
import { type BrowserDriver, select, textOf, until } from '#tests/tools/driver.ts';
import type { Firefox } from '#tests/tools/firefox.ts';
import { driveFirefox } from '#tests/tools/firefox-driver.ts';
import { clickOnSlip, keepIt, lastPictures, pressInPopup, slipOf } from '#tests/tools/keep-from-popup.ts';
import { bringInSyllabus } from '#tests/tools/main-job.ts';
import { lookAtSlip } from '#tests/tools/slip-look.ts';

declare const chrome: typeof Browser;

const SYLLABUS = '1 Waves\n\t1.1 Dispersion of waves\n2 Depth\n\t2.1 Depth of water on the shelf';
const PAGE = '/ebbledore/wave-pictures';

/** The middle of each cell of the pattern, as shares of the whole, and its colour. */
const CELLS = Array.from({ length: PATTERN.columns * PATTERN.rows }, (_, index) => {
  const [column, row] = [index % PATTERN.columns, Math.floor(index / PATTERN.columns)];
  const point: [number, number] = [(column + 0.5) / PATTERN.columns, (row + 0.5) / PATTERN.rows];
  return { point, colour: patternColour(column, row) };
});
const MIDDLES = CELLS.map(({ point }) => point);

/** The largest difference in any part of any colour. */
const farthest = (colours: number[][]): number =>
  Math.max(...CELLS.flatMap(({ colour }, i) => colour.map((part, j) => Math.abs(part - colours[i]![j]!))));

const boxOf = (driver: BrowserDriver, css: string) =>
  driver.tab.run((selector) => {
    const { x, y, width, height } = document.querySelector(selector)!.getBoundingClientRect();
    return { x, y, width, height };
  }, css);

async function openFrame(driver: BrowserDriver): Promise<void> {
  await pressInPopup(driver, 'Frame a diagram');
  await until('the frame', () =>
    driver.tab.run(() => document.querySelector('plumbline-frame') !== null && document.hasFocus()),
  );
}

const isFrameGone = (driver: BrowserDriver) =>
  until('the frame to go', () => driver.tab.run(() => document.querySelector('plumbline-frame') === null));

/** Drags a frame right over the pattern, and waits for the slip on it. */
async function framePattern(driver: BrowserDriver): Promise<{ ratio: number }> {
  await openFrame(driver);
  const { x, y, width, height } = await boxOf(driver, '#pattern');
  await drag(driver, { x, y }, { x: x + width, y: y + height });
  await slipOf(driver);
  return { ratio: await driver.tab.run(() => devicePixelRatio) };
}

/** The page with a picture of another site, once that has come. */
async function openElsewhere({ tab }: BrowserDriver, origin: string, other: string): Promise<void> {
  await tab.goto(`${origin}${PAGE}?other=${other.replace('127.0.0.1', 'localhost')}`);
  await until('the picture from elsewhere', () =>
    tab.run(() => document.querySelector<HTMLImageElement>('#foreign')!.naturalWidth > 0),
  );
}

async function expectPattern(driver: BrowserDriver, ratio: number): Promise<void> {
  const { pictures } = await lastPictures(driver, MIDDLES);
  expect(pictures).toHaveLength(1);
  const [picture] = pictures;
  // A drag ends on whole CSS pixels, and the picture may begin between two.
  expect(Math.abs(picture!.width - 240 * ratio)).toBeLessThanOrEqual(2 * ratio);
  expect(Math.abs(picture!.height - 160 * ratio)).toBeLessThanOrEqual(2 * ratio);
  expect(farthest(picture!.colours)).toBeLessThanOrEqual(3);
}

describe.each([
  ['Chromium', driveChromium],
  ['Firefox', driveFirefox],
] as const)('pictures in %s', (name, drive) => {
  let driver: BrowserDriver;
  let pages: Awaited<ReturnType<typeof startLearningPages>>;
  let elsewhere: Awaited<ReturnType<typeof startLearningPages>>;

  beforeAll(async () => {
    [pages, elsewhere] = await Promise.all([startLearningPages(), startLearningPages()]);
    driver = await drive();
    await bringInSyllabus(driver, SYLLABUS);
  });
  afterAll(async () => {
    await driver?.close();
    await Promise.all([pages?.close(), elsewhere?.close()]);
  });
  const open = () => driver.tab.goto(pages.origin + PAGE);

  test('a frame drawn with the mouse keeps what was on the page, under its caption', async () => {
    await open();
    const { ratio } = await framePattern(driver);
    const look = await slipOf(driver);
    expect(look.passage.trim()).toBe('Depth of water along six sections of the shelf');
    expect(look.topics.find(({ checked }) => checked)?.name).toMatch(/^2\.1 /);
    await driver.tab.type('Blue is shallow.');
    await keepIt(driver);
    await expectPattern(driver, ratio);
    expect(await textOf(driver.tab)).toContain('Depth of water along six sections of the shelf');
  });

  test('the same with the keyboard alone: arrow keys move, with Shift they size, Enter keeps', async () => {
    await open();
    await openFrame(driver);
    // It begins on the largest picture in view.
    for (let i = 0; i < 5; i++) await driver.tab.press('ArrowRight');
    for (let i = 0; i < 10; i++) await driver.tab.press('Shift+ArrowLeft');
    for (let i = 0; i < 5; i++) await driver.tab.press('Shift+ArrowUp');
    await driver.tab.press('Enter');
    await slipOf(driver);
    await keepIt(driver);
    // The pattern without 20 pixels at its left, 20 at its right and 20 below.
    const { pictures } = await lastPictures(driver, [
      [0.05, 0.05],
      [0.95, 0.95],
    ]);
    expect(pictures.map(({ width, height }) => [width, height])).toEqual([[200, 140]]);
    expect(pictures[0]!.colours).toEqual([patternColour(0, 0), patternColour(5, 3)]);
  });

  test('pressing a picture frames the whole of it, and another frame under the same caption is another clip', async () => {
    await open();
    await openFrame(driver);
    const { x, y } = await boxOf(driver, '#pattern');
    await driver.tab.clickAt(x + 50, y + 50);
    expect((await slipOf(driver)).text).not.toContain('before');
    await keepIt(driver);
    await expectPattern(driver, 1);
    await driver.tab.gotoDesk('#/clips');
    await until('three clips', async () => (await textOf(driver.tab)).includes('All (3)'));
  });

  test('Escape leaves the frame, and nothing of it stays', async () => {
    await open();
    await openFrame(driver);
    await driver.tab.press('Escape');
    await isFrameGone(driver);
    expect(await lookAtSlip(driver.tab)).toBeNull();
  });

  test('scrolled and zoomed, it is right all the same', async () => {
    await open();
    const zoom = (to: number) =>
      name === 'Chromium'
        ? (driver as ChromiumDriver).browser.worker().then((worker) =>
            worker.evaluate(async (factor) => {
              const [tab] = await chrome.tabs.query({ active: true });
              await chrome.tabs.setZoom(tab!.id!, factor);
            }, to),
          )
        : (driver as BrowserDriver & { firefox: Firefox }).firefox.inChrome(() =>
            (driver as BrowserDriver & { firefox: Firefox }).firefox.run(`ZoomManager.zoom = ${to}`),
          );
    await zoom(1.5);
    await until('the zoom', () => driver.tab.run(() => devicePixelRatio === 1.5));
    await driver.tab.run(() => document.querySelector('#pattern')!.scrollIntoView({ block: 'center' }));
    await openFrame(driver);
    const { x, y, width, height } = await boxOf(driver, '#pattern');
    await drag(driver, { x, y }, { x: x + width, y: y + height });
    await slipOf(driver);
    await keepIt(driver);
    await zoom(1);
    await expectPattern(driver, 1.5);
  });

  test('images in a selection are kept with it and are still there when the page is gone', async () => {
    const ours = await startLearningPages();
    await driver.tab.goto(ours.origin + PAGE);
    await select(driver.tab, '#with-pictures');
    await driver.tab.openSlip();
    const look = await slipOf(driver);
    expect(look.passage).toContain('Small signs sign stay words');
    const shown = await driver.tab.inSlip((root) =>
      [...root!.querySelectorAll<HTMLImageElement>('.preview img')].map((image) => image.naturalWidth > 0),
    );
    expect(shown).toEqual([true, true, true]);
    await keepIt(driver);
    await ours.close();
    const { pictures, text } = await lastPictures(driver, MIDDLES);
    expect(pictures.map(({ alt, shown: size }) => [alt, size])).toEqual([
      ['Depth by colour, six columns of four', [240, 160]],
      ['A train of waves', [160, 60]],
      ['Two halves of a wave', [120, 80]],
    ]);
    expect(farthest(pictures[0]!.colours)).toBe(0);
    // The canvas: green on the left, yellow on the right.
    expect([pictures[2]!.colours[0], pictures[2]!.colours[5]]).toEqual([
      [23, 92, 76],
      [242, 193, 78],
    ]);
    expect(text).toContain('Depth of water along six sections of the shelf');
  });

  test('a drawing is kept as the page’s style sheet shows it', async () => {
    const { pictures } = await lastPictures(driver, [[10.5 / 160, 15.5 / 60]]);
    const [red, green, blue] = pictures[1]!.colours[0]!;
    // The first crest, in the colour that the page's style sheet gives the stroke.
    expect(Math.abs(red! - 179) + Math.abs(green! - 84) + Math.abs(blue! - 30)).toBeLessThanOrEqual(40);
  });

  test('images in a section that the selection was widened to are kept too, without the part that was dropped', async () => {
    await open();
    await select(driver.tab, '#with-pictures p');
    await driver.tab.openSlip();
    await slipOf(driver);
    await clickOnSlip(driver, '.scopes button');
    const parts = await until('the parts', () =>
      driver.tab.inSlip((root) => {
        const all = [...root!.querySelectorAll('.parts .passage')].map((part) => part.textContent.trim());
        return all.length > 0 && all;
      }),
    );
    expect(parts[2]).toContain('[Picture] Depth by colour, six columns of four');
    await clickOnSlip(driver, '.parts .check:nth-child(3) input');
    await driver.tab.press('Enter');
    await until('it to be kept', async () => (await lookAtSlip(driver.tab))?.text.startsWith('Kept'));
    await driver.tab.press('Escape');
    const { pictures } = await lastPictures(driver, MIDDLES);
    expect(pictures.map(({ alt }) => alt)).toEqual(['A train of waves', 'Two halves of a wave']);
  });

  test('a picture of another site is cut out of what is seen; where it is not all seen, its text is kept', async () => {
    await openElsewhere(driver, pages.origin, elsewhere.origin);
    const tainted = await driver.tab.run(() => {
      const pen = document.createElement('canvas').getContext('2d')!;
      pen.drawImage(document.querySelector<HTMLImageElement>('#foreign')!, 0, 0);
      try {
        return pen.getImageData(0, 0, 1, 1).data.length === 0;
      } catch {
        return true;
      }
    });
    expect(tainted).toBe(true);
    await select(driver.tab, '#from-elsewhere');
    await driver.tab.openSlip();
    // What was selected can still be widened.
    expect((await slipOf(driver)).text).toContain('Keep this section');
    await keepIt(driver);
    await expectPattern(driver, 1);

    await openElsewhere(driver, pages.origin, elsewhere.origin);
    await select(driver.tab, '#from-elsewhere');
    await driver.tab.run(() => {
      const image = document.querySelector('#foreign')!;
      scrollBy(0, image.getBoundingClientRect().top + 60);
    });
    await driver.tab.openSlip();
    const look = await slipOf(driver);
    if (!look.passage.includes('Depth by colour, kept elsewhere'))
      throw new Error(`The text of the picture is not there: ${look.passage}`);
    expect(await driver.tab.inSlip((root) => root!.querySelectorAll('.preview img').length)).toBe(0);
    await driver.tab.press('Escape');
  });

  test('a page that forbids every picture but its own does not hide what will be kept', async () => {
    const png = await patternPng();
    const strict = createServer((request, answer) => {
      const isPicture = request.url === '/pattern.png';
      answer.setHeader('content-type', isPicture ? 'image/png' : 'text/html');
      answer.setHeader(
        'content-security-policy',
        `default-src 'none'; img-src 'self'; require-trusted-types-for 'script'; trusted-types 'none'`,
      );
      answer.end(
        isPicture ? png : '<!doctype html><title>Strict</title><p id="all">Seen: <img src="pattern.png">',
      );
    });
    await new Promise<void>((ready) => strict.listen(0, '127.0.0.1', ready));
    try {
      await driver.tab.goto(`http://127.0.0.1:${(strict.address() as AddressInfo).port}/`);
      await select(driver.tab, '#all');
      await driver.tab.openSlip();
      await slipOf(driver);
      await until('the picture on the slip', () =>
        driver.tab.inSlip(
          (root) => root!.querySelector<HTMLImageElement>('.preview img')!.naturalWidth === 240,
        ),
      );
      await keepIt(driver);
      await expectPattern(driver, 1);
    } finally {
      strict.closeAllConnections();
      strict.close();
    }
  });

  test('a picture alone, without a word, can be kept', async () => {
    await open();
    await select(driver.tab, '#alone');
    await driver.tab.openSlip();
    await slipOf(driver);
    await keepIt(driver);
    await expectPattern(driver, 1);
  });
});

describe('at two pixels to one', () => {
  let pages: Awaited<ReturnType<typeof startLearningPages>>;
  let elsewhere: Awaited<ReturnType<typeof startLearningPages>>;
  beforeAll(async () => {
    [pages, elsewhere] = await Promise.all([startLearningPages(), startLearningPages()]);
  });
  afterAll(() => Promise.all([pages?.close(), elsewhere?.close()]));

  test.each([
    [
      'Chromium',
      () =>
        driveChromium({
          args: ['--force-device-scale-factor=2', '--window-size=1280,900'],
          context: { viewport: null },
        }),
    ],
    [
      'Firefox',
      async () => {
        const driver = await driveFirefox();
        const set = `Services.prefs.setCharPref('layout.css.devPixelsPerPx', '2')`;
        await driver.firefox.inChrome(() => driver.firefox.run(set));
        return driver;
      },
    ],
  ] as const)('%s keeps a frame sharp, and what it cuts out of a selection', async (_name, start) => {
    const driver = await start();
    try {
      await bringInSyllabus(driver, SYLLABUS);
      await driver.tab.goto(pages.origin + PAGE);
      await driver.tab.run(() => document.querySelector('#pattern')!.scrollIntoView({ block: 'center' }));
      const { ratio } = await framePattern(driver);
      expect(ratio).toBe(2);
      await keepIt(driver);
      await expectPattern(driver, 2);

      await openElsewhere(driver, pages.origin, elsewhere.origin);
      await select(driver.tab, '#from-elsewhere');
      await driver.tab.openSlip();
      await slipOf(driver);
      await keepIt(driver);
      // Twice as large as the file: it is from the screen.
      await expectPattern(driver, 2);
    } finally {
      await driver.close();
    }
  });
});
