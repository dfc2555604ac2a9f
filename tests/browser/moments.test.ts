import { cp, mkdtemp, readFile, rm, writeFile } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { driveChromium } from '#tests/tools/chromium-driver.ts';
import { startLearningPages } from '#tests/tools/demo/server.ts';
import { videoColour } from '#tests/tools/demo/video.ts';
import { type BrowserDriver, click, select, sees, textOf, until } from '#tests/tools/driver.ts';
import { driveFirefox } from '#tests/tools/firefox-driver.ts';
import { clickOnSlip, keepIt, lastPictures, pressInPopup, slipOf } from '#tests/tools/keep-from-popup.ts';
import { bringInSyllabus } from '#tests/tools/main-job.ts';
import { lookAtSlip } from '#tests/tools/slip-look.ts';

const SYLLABUS = '1 Waves\n\t1.1 Dispersion of waves\n\t1.2 Orbits of water particles';
const PAGE = '/lagoonery/orbit-film';
const MOMENT = 'Keep this moment of the video';

/** The selectors of all clips, read from the deck as it lies on the disk. */
const selectorsInDeck = ({ tab }: BrowserDriver) =>
  tab.run(async () => {
    const { name } = (await indexedDB.databases())[0]!;
    const db = await new Promise<IDBDatabase>((done, fail) => {
      const opening = indexedDB.open(name!);
      opening.onsuccess = () => done(opening.result);
      opening.onerror = () => fail(opening.error as DOMException);
    });
    const clips = await new Promise<{ createdAt: number; selectors: { value?: string }[] }[]>((done) => {
      const all = db.transaction('clips').objectStore('clips').getAll();
      all.onsuccess = () => done(all.result);
    });
    db.close();
    return clips.sort((a, b) => a.createdAt - b.createdAt).map(({ selectors }) => selectors);
  });

/** Opens the film and goes to a time in it. */
async function watchFilm({ tab }: BrowserDriver, origin: string, time: number): Promise<void> {
  await tab.goto(origin + PAGE);
  await until('the film', () =>
    tab.run((seconds) => {
      const film = document.querySelector('video')!;
      film.scrollIntoView({ block: 'center' });
      if (film.readyState > 1 && film.currentTime !== seconds) film.currentTime = seconds;
      const { cues } = film.textTracks[0]!;
      return film.currentTime === seconds && !film.seeking && film.readyState > 1 && (cues?.length ?? 0) > 0;
    }, time),
  );
}

describe.each([
  ['Chromium', driveChromium],
  ['Firefox', driveFirefox],
] as const)('moments of a video in %s', (_name, drive) => {
  let driver: BrowserDriver;
  let pages: Awaited<ReturnType<typeof startLearningPages>>;

  beforeAll(async () => {
    pages = await startLearningPages();
    driver = await drive();
    await bringInSyllabus(driver, SYLLABUS);
  });
  afterAll(async () => {
    await driver?.close();
    await pages?.close();
  });

  /** Opens the film and goes to a time in it. */
  async function watch(time: number): Promise<void> {
    await driver.tab.goto(pages.origin + PAGE);
    await until('the film', () =>
      driver.tab.run((seconds) => {
        const film = document.querySelector('video')!;
        film.scrollIntoView({ block: 'center' });
        if (film.readyState > 1 && film.currentTime !== seconds) film.currentTime = seconds;
        const { cues } = film.textTracks[0]!;
        return (
          film.currentTime === seconds && !film.seeking && film.readyState > 1 && (cues?.length ?? 0) > 0
        );
      }, time),
    );
  }
  const fieldsOnSlip = () =>
    driver.tab.inSlip((root) => ({
      from: root!.querySelector<HTMLInputElement>('#moment-from')!.value,
      to: root!.querySelector<HTMLInputElement>('#moment-to')!.value,
      said: root!.querySelector('#time-fault')!.textContent,
    }));
  const film = () =>
    driver.tab.run(() => {
      const { currentTime, paused } = document.querySelector('video')!;
      return { currentTime, paused };
    });

  test('where there is no video, the slip says so', async () => {
    await driver.tab.goto(`${pages.origin}/ebbledore/hydrostatic-balance`);
    await pressInPopup(driver, MOMENT);
    await until('the notice', async () => (await lookAtSlip(driver.tab))?.text.includes('There is no video'));
    await driver.tab.press('Escape');
  });

  test('a moment is kept with its captions, a still of it and its time', async () => {
    await watch(9.5);
    await driver.tab.run(() => void document.querySelector('video')!.play());
    await pressInPopup(driver, MOMENT);
    const look = await slipOf(driver);
    expect((await film()).paused).toBe(true);
    expect(look.passage).toContain('The radius of the circle falls off as e to the power of kz.');
    expect(look.topics.some(({ name }) => name.startsWith('1.2 '))).toBe(true);
    await driver.tab.press('Escape');

    await watch(9.5);
    await pressInPopup(driver, MOMENT);
    await slipOf(driver);
    expect(await fieldsOnSlip()).toMatchObject({ from: '0:09', to: '' });
    await driver.tab.type('Circles shrink with depth.');
    await keepIt(driver);
    const { text, pictures } = await lastPictures(driver, [[0.05, 0.1]]);
    expect(text).toContain('The radius of the circle falls off as e to the power of kz.');
    expect(pictures.map(({ width, height }) => [width, height])).toEqual([[320, 180]]);
    const off = pictures[0]!.colours[0]!.map((part, index) => Math.abs(part - videoColour(9.5)[index]!));
    expect(Math.max(...off)).toBeLessThanOrEqual(12);
    expect(await textOf(driver.tab)).toContain('Orbits under a wave, filmed');
    expect(await selectorsInDeck(driver)).toEqual([
      [{ type: 'FragmentSelector', conformsTo: 'http://www.w3.org/TR/media-frags/', value: 't=9.5' }],
    ]);
  });

  test('the same moment again is the same clip', async () => {
    await watch(9.5);
    await pressInPopup(driver, MOMENT);
    expect((await slipOf(driver)).text).toContain('You kept this passage before');
    await driver.tab.press('Escape');
  });

  test('a stretch: its end is written by keyboard, what is no time is told, and its captions are all kept', async () => {
    await watch(14);
    await pressInPopup(driver, MOMENT);
    await slipOf(driver);
    await driver.tab.inSlip((root) => root!.querySelector<HTMLInputElement>('#moment-to')!.focus());
    await driver.tab.type('soon');
    await until('the trouble', async () => (await fieldsOnSlip()).said?.includes('“soon” is no time'));
    await driver.tab.press('Enter');
    await until('the refusal', async () =>
      (await lookAtSlip(driver.tab))?.text.match(/is no time.*is no time/s),
    );
    for (let i = 0; i < 4; i++) await driver.tab.press('Backspace');
    await driver.tab.type('0:10');
    await until('the trouble', async () => (await fieldsOnSlip()).said?.includes('must come after'));
    for (let i = 0; i < 4; i++) await driver.tab.press('Backspace');
    await driver.tab.type('0:20');
    await until('both captions', async () => {
      const { passage } = (await lookAtSlip(driver.tab))!;
      return passage.includes('almost nothing moves') && passage.includes('square root of g over k');
    });
    await keepIt(driver);
    const { text } = await lastPictures(driver, []);
    expect(text).toContain('Half a wavelength down, almost nothing moves.');
    expect((await selectorsInDeck(driver)).at(-1)).toMatchObject([{ value: 't=14,20' }]);
  });

  test('without captions the page’s title stands for them, and two such moments are two clips', async () => {
    for (const time of [2, 3]) {
      await watch(time);
      await driver.tab.run(() => void (document.querySelector('video')!.textTracks[0]!.mode = 'disabled'));
      await pressInPopup(driver, MOMENT);
      expect((await slipOf(driver)).passage.trim()).toBe('Orbits under a wave, filmed');
      await keepIt(driver);
    }
    await driver.tab.gotoDesk('#/clips');
    await sees(driver.tab, 'All (4)');
  });

  test('back on the page, the shortcut lists what was kept of the video and goes there', async () => {
    await watch(0);
    await driver.tab.openSlip();
    const look = await slipOf(driver);
    const listed = [...look.text.matchAll(/Go there: ([\d:]+(?: to [\d:]+)?)/g)].map((match) => match[1]);
    expect(listed).toEqual(['0:02', '0:03', '0:09', '0:14 to 0:20']);
    expect(look.text).toContain('Circles shrink with depth.');
    await driver.tab.run(() => void (document.querySelector('video')!.playbackRate = 8));
    await clickOnSlip(driver, '.found li:nth-child(3) button');
    await until('the moment', async () => Math.abs((await film()).currentTime - 9.5) < 0.2);
    expect(await lookAtSlip(driver.tab)).toBeNull();
    expect((await film()).paused).toBe(true);

    await driver.tab.openSlip();
    await slipOf(driver);
    await clickOnSlip(driver, '.found li:nth-child(4) button');
    // It plays from 14 to 20 and stops.
    await until('the end of the stretch', async () => {
      const { currentTime, paused } = await film();
      return paused && currentTime >= 20 && currentTime < 24;
    });
  });

  test('a selection on a page with a video is still a selection', async () => {
    await watch(0);
    await select(driver.tab, '.lede');
    await driver.tab.openSlip();
    expect((await slipOf(driver)).passage).toContain('A short film of what the water does');
    await driver.tab.press('Escape');
  });
});

// The browser's own question for a site cannot be answered by a test: the site is granted in the manifest of a copy.
test('on a site that was granted, opening the source from the desk goes to the moment', async () => {
  const folder = await mkdtemp(join(tmpdir(), 'plumbline-granted-'));
  await cp('.output/chrome-mv3', folder, { recursive: true });
  const manifest = JSON.parse(await readFile(join(folder, 'manifest.json'), 'utf8'));
  await writeFile(
    join(folder, 'manifest.json'),
    JSON.stringify({ ...manifest, host_permissions: ['http://127.0.0.1/*'] }),
  );
  const pages = await startLearningPages();
  const driver = await driveChromium({ extension: folder });
  try {
    await bringInSyllabus(driver, SYLLABUS);
    await watchFilm(driver, pages.origin, 9.5);
    await driver.tab.openSlip();
    await slipOf(driver);
    await keepIt(driver);
    await lastPictures(driver, []);
    const opened = driver.browser.context.waitForEvent('page');
    await click(driver.tab, 'Orbits under a wave, filmed');
    const page = await opened;
    await until('the moment', () =>
      page.evaluate(() => Math.abs((document.querySelector('video')?.currentTime ?? 0) - 9.5) < 0.2),
    );
    expect(await page.evaluate(() => document.querySelector('plumbline-slip'))).toBeNull();
  } finally {
    await driver.close();
    await pages.close();
    await rm(folder, { recursive: true, force: true });
  }
});
