import { afterAll, beforeAll, beforeEach, describe, expect, test } from 'vitest';
import { waveNote } from '#tests/tools/demo/pdfs/papers.ts';
import {
  type AnyDriver,
  BROWSERS,
  SYLLABUS,
  dropFile,
  filesOf,
  lineAt,
  servePdf,
} from '#tests/tools/demo/pdfs/reader.ts';
import { click, sees, until } from '#tests/tools/driver.ts';
import { bringInSyllabus } from '#tests/tools/main-job.ts';

let files: Awaited<ReturnType<typeof filesOf>>;
beforeAll(async () => {
  files = await filesOf({
    'waves.pdf': waveNote(),
  });
});
afterAll(() => files?.remove());

describe.each(BROWSERS)('the PDF of a tab in %s', (name, drive) => {
  let driver: AnyDriver;
  beforeAll(async () => {
    driver = await drive();
    await bringInSyllabus(driver, SYLLABUS);
  });
  afterAll(async () => driver?.close());

  let server: Awaited<ReturnType<typeof servePdf>>;
  beforeAll(async () => {
    server = await servePdf(waveNote());
  });
  afterAll(() => server?.close());
  beforeEach(() => driver.tab.goto('about:blank'));

  const openFromPopup = async (path: string, button: string) => {
    await driver.tab.goto(server.origin + path);
    const before = 'firefox' in driver ? await driver.firefox.tabs() : [];
    const opened =
      'firefox' in driver
        ? null
        : driver.browser.context.waitForEvent('page', (page) => page.url().includes('pdf.html'));
    const popup = await driver.tab.openPopup();
    await sees(popup, button);
    if (opened) {
      await click(popup, button);
      return opened;
    }
    const { firefox } = driver as Extract<AnyDriver, { firefox: unknown }>;
    const newTab = async () => (await firefox.tabs()).find((tab) => !before.includes(tab));
    const added = await until(
      'the reader',
      async () => {
        // The popup grows while the deck is read: a click that missed its button is made again.
        await click(popup, button).catch(() => undefined);
        return until('its tab', newTab, 4_000).catch(() => null);
      },
      40_000,
    );
    await firefox.switchTo(added);
    return null;
  };

  test.runIf(name === 'Chromium')('its bytes come from the browser’s cache', async () => {
    const reader = (await openFromPopup('/waves.pdf', 'Open this PDF in the desk'))!;
    await until('the text', () => reader.evaluate(() => document.body.innerText.includes('Surface gravity')));
    expect(await reader.evaluate(() => document.body.innerText)).toContain('The Lagoonery · waves.pdf');
    expect(server.asked('/waves.pdf')).toBe(1);
    await reader.close();
  });

  test.runIf(name === 'Chromium')(
    'where the cache has none, its own address is asked once more',
    async () => {
      // The address does not look like that of a PDF: the tab is asked what it shows.
      const reader = (await openFromPopup('/fresh/waves', 'Open a PDF'))!;
      await until('the text', () =>
        reader.evaluate(() => document.body.innerText.includes('Surface gravity')),
      );
      expect(server.asked('/fresh/waves')).toBe(2);
      await reader.close();
    },
  );

  test.runIf(name === 'Firefox')('the browser lets no script in: what to do is told', async () => {
    await openFromPopup('/waves.pdf', 'Open this PDF in the desk');
    await sees(driver.tab, 'Save the file (Ctrl+S in its tab), then drop it here');
    await dropFile(driver, files.path('waves.pdf'), 'waves.pdf');
    await lineAt(driver.tab, 'Surface gravity waves');
    expect(server.asked('/waves.pdf')).toBe(1);
  });
});
