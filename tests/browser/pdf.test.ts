import axe, { type AxeResults } from 'axe-core';
import { readFile } from 'node:fs/promises';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import type { SourceFile } from '#lib/model/source-file.ts';
import { driveChromium } from '#tests/tools/chromium-driver.ts';
import { demoPages } from '#tests/tools/demo/pages.ts';
import {
  DARK_SHARES,
  PASSWORD,
  lockedFile,
  manyPages,
  packedScans,
  scanned,
  truncated,
  twoColumns,
  waveNote,
} from '#tests/tools/demo/pdfs/papers.ts';
import {
  type AnyDriver,
  BROWSERS,
  SYLLABUS,
  clickTool,
  darkShare,
  drawnPages,
  dropFile,
  filesOf,
  goToPage,
  lineAt,
  openedSlip,
  pickFile,
  readerUrl,
  rowsOf,
} from '#tests/tools/demo/pdfs/reader.ts';
import { startLearningPages } from '#tests/tools/demo/server.ts';
import { sees, textOf, until } from '#tests/tools/driver.ts';
import { bringInSyllabus } from '#tests/tools/main-job.ts';

/** A demo page printed by Chromium: its fonts are in the file. */
async function printedPage(): Promise<Buffer> {
  const pages = await startLearningPages();
  const printer = await driveChromium();
  try {
    await printer.tab.goto(pages.origin + demoPages.find(({ markup }) => markup === 'katex')!.path);
    await printer.page.evaluate(() => document.fonts.ready);
    return await printer.page.pdf({ format: 'A4' });
  } finally {
    await printer.close();
    await pages.close();
  }
}

let files: Awaited<ReturnType<typeof filesOf>>;
beforeAll(async () => {
  files = await filesOf({
    'waves.pdf': waveNote(),
    'columns.pdf': twoColumns(),
    'scan.pdf': scanned(),
    'many.pdf': manyPages(120),
    'half.pdf': truncated(),
    'empty.pdf': Buffer.alloc(0),
    'noise.pdf': Buffer.from(Array.from({ length: 5000 }, (_, i) => (i * 7919 + (i >> 3)) % 251)),
    'locked.pdf': await readFile(lockedFile),
    'printed.pdf': await printedPage(),
    'packed.pdf': await packedScans(),
  });
});
afterAll(() => files?.remove());

describe.each(BROWSERS)('a PDF in %s', (_name, drive) => {
  let driver: AnyDriver;
  beforeAll(async () => {
    driver = await drive();
    await bringInSyllabus(driver, SYLLABUS);
  });
  afterAll(async () => driver?.close());

  const open = async (file: string, text: string) => {
    await pickFile(driver, files.path(file));
    return lineAt(driver.tab, text);
  };

  describe('is opened', () => {
    test('by picking it: its title, its pages, its text', async () => {
      await open('waves.pdf', 'Surface gravity waves');
      const text = await textOf(driver.tab);
      for (const told of ['Waves on water of any depth', 'The Lagoonery · waves.pdf', 'of 3'])
        expect(text).toContain(told);
      expect(await driver.tab.run(() => document.title)).toBe('Waves on water of any depth · Plumbline');
      // The table of Japanese characters was found without a request.
      await goToPage(driver, 2);
      await lineAt(driver.tab, '海の波');
    });

    test('by dropping it; without a title of its own its largest line is one', async () => {
      await driver.tab.goto(readerUrl(driver));
      await sees(driver.tab, 'Drop a PDF anywhere');
      await dropFile(driver, files.path('columns.pdf'), 'columns.pdf');
      await lineAt(driver.tab, 'The tide is a very long wave');
      expect(await textOf(driver.tab)).toContain('Tides in two columns');
    });

    test('with fonts of its own: they are used, and nothing breaks the policy of the page', async () => {
      await driver.tab.goto(readerUrl(driver));
      await sees(driver.tab, 'Drop a PDF anywhere');
      await driver.tab.run(() => {
        const broken: string[] = [];
        Object.assign(window, { broken });
        document.addEventListener('securitypolicyviolation', ({ violatedDirective }) =>
          broken.push(violatedDirective),
        );
      });
      await dropFile(driver, files.path('printed.pdf'), 'printed.pdf');
      const dark = await until('a drawn page', () => darkShare(driver.tab, 1));
      expect(dark).toBeGreaterThan(0.005);
      expect(dark).toBeLessThan(0.5);
      const seen = await driver.tab.run(() => ({
        fonts: [...document.fonts].map(({ status }) => status),
        broken: (window as unknown as { broken: string[] }).broken,
      }));
      expect(seen.fonts.length).toBeGreaterThan(2);
      expect(new Set(seen.fonts)).toEqual(new Set(['loaded']));
      expect(seen.broken).toEqual([]);
    });

    test('with scans in JPEG 2000 and in Group 4, which are unpacked without WebAssembly', async () => {
      await pickFile(driver, files.path('packed.pdf'));
      for (const [i, share] of DARK_SHARES.entries()) {
        await goToPage(driver, i + 1);
        const dark = await until(`page ${i + 1}`, () => darkShare(driver.tab, i + 1));
        expect(dark).toBeCloseTo(share, 2);
      }
    });

    test('with its password only, and a wrong one is told', async () => {
      await pickFile(driver, files.path('locked.pdf'));
      await sees(driver.tab, 'This PDF is locked');
      await driver.tab.type('harbour');
      await driver.tab.press('Enter');
      await sees(driver.tab, 'That is not the password of this file');
      await driver.tab.type(PASSWORD);
      await driver.tab.press('Enter');
      await lineAt(driver.tab, 'Surface gravity waves');
    });

    test.each([
      ['half.pdf', 'This PDF is damaged and cannot be read'],
      ['noise.pdf', 'This file is not a PDF'],
      ['empty.pdf', 'This file is empty'],
    ])('or not, and why not: %s', async (file, told) => {
      await pickFile(driver, files.path(file));
      await sees(driver.tab, told);
      // The next one can be opened right away.
      expect(await driver.tab.run(() => document.querySelector('#pdf-file') !== null)).toBe(true);
    });
  });

  test('the file itself is kept when the student says so, and opens at the passage', async () => {
    await open('waves.pdf', 'Surface gravity waves');
    await until('the file to be kept', () =>
      driver.tab.run(() => {
        const box = document.querySelector<HTMLInputElement>('.pdf-about input[type=checkbox]');
        if (box && !box.checked) box.click();
        return box?.checked && !box.disabled;
      }),
    );
    const [row, ...more] = await rowsOf<SourceFile>(driver.tab, 'files');
    expect([row!.name, more]).toEqual(['waves.pdf', []]);
    await driver.restart();
    await driver.tab.goto(readerUrl(driver, `#source=${row!.sourceId}&page=2&viewrect=72,100,300,40`));
    await lineAt(driver.tab, 'Energy travels');
    const mark = await until('the mark', () =>
      driver.tab.run(() => {
        const box = document.querySelector('[data-page="2"] .pdf-mark')?.getBoundingClientRect();
        return box && box.top > 0 && box.bottom < innerHeight && [box.width, box.height];
      }),
    );
    expect(mark[0]! / mark[1]!).toBeCloseTo(300 / 40, 1);
  });

  test('a source whose file was not kept asks for it', async () => {
    const name = `ni:///sha-256;${'A'.repeat(43)}`;
    const id = await driver.tab.run(async (url) => {
      const request = indexedDB.open('plumbline');
      const db = await new Promise<IDBDatabase>((done) => (request.onsuccess = () => done(request.result)));
      const row = {
        ...{ id: crypto.randomUUID(), createdAt: 1, changedAt: 1, kind: 'pdf', url, title: 'Lost sheet' },
        ...{ site: '', author: '', published: '', licence: '' },
      };
      const adding = db.transaction('sources', 'readwrite').objectStore('sources').add(row);
      await new Promise((done) => (adding.onsuccess = done));
      db.close();
      return row.id;
    }, name);
    await driver.tab.goto('about:blank');
    await driver.tab.goto(readerUrl(driver, `#source=${id}&page=2`));
    await sees(driver.tab, 'The file of “Lost sheet” is not in your deck');
  });

  test('of many pages: only those near are drawn, and any can be gone to', async () => {
    await open('many.pdf', 'Problem 1');
    await until('the sizes', () =>
      driver.tab.run(() => {
        const page = document.querySelector<HTMLElement>('[data-page="120"]')!;
        return page.offsetWidth > page.offsetHeight;
      }),
    );
    expect((await drawnPages(driver.tab)).length).toBeLessThan(8);
    await goToPage(driver, 3);
    // The page has the keyboard now, and the number is written anew.
    await until('page 3 to have the keyboard', () =>
      driver.tab.run(() => (document.activeElement as HTMLElement).dataset.page === '3'),
    );
    await goToPage(driver, 97);
    await lineAt(driver.tab, 'Problem 97');
    await until('page 97 to be told', () =>
      driver.tab.run(() => document.querySelector<HTMLInputElement>('#pdf-page-number')!.value === '97'),
    );
    await until('the first page to be blank again', async () => !(await drawnPages(driver.tab)).includes(1));
    expect((await drawnPages(driver.tab)).length).toBeLessThan(8);
  });

  test('larger and smaller: the page in view stays in view', async () => {
    const wide = () => driver.tab.run(() => document.querySelector<HTMLElement>('.pdf-page')!.offsetWidth);
    const before = await wide();
    await clickTool(driver, 'Smaller');
    await until('a smaller page', async () => (await wide()) < before);
    await clickTool(driver, 'Larger');
    await clickTool(driver, 'Fit the width');
    await until('the same page', async () => (await wide()) === before);
    expect(
      await driver.tab.run(() => document.querySelector<HTMLInputElement>('#pdf-page-number')!.value),
    ).toBe('97');
  });
});

describe('axe finds nothing in the reader', () => {
  let driver: Awaited<ReturnType<typeof driveChromium>>;
  beforeAll(async () => {
    driver = await driveChromium();
    await bringInSyllabus(driver, SYLLABUS);
  });
  afterAll(async () => driver?.close());

  const OPTIONS = JSON.stringify({
    runOnly: ['wcag2a', 'wcag2aa', 'wcag21a', 'wcag21aa', 'wcag22aa', 'best-practice'],
    resultTypes: ['violations'],
  });
  /** In both schemes and at two widths. Nothing may spill over the side either. */
  async function everyLook(): Promise<string[]> {
    const found: string[] = [];
    for (const width of [360, 1280])
      for (const colorScheme of ['light', 'dark'] as const) {
        await driver.page.setViewportSize({ width, height: 800 });
        await driver.page.emulateMedia({ colorScheme });
        await driver.page.evaluate(axe.source);
        const { violations } = (await driver.page.evaluate(`axe.run(document, ${OPTIONS})`)) as AxeResults;
        found.push(
          ...violations.map(
            ({ id, nodes }) =>
              `${width} ${colorScheme} ${id}: ${nodes.map(({ html }) => html.slice(0, 160)).join(' | ')}`,
          ),
        );
        const spill = await driver.page.evaluate(() => document.documentElement.scrollWidth - innerWidth);
        if (spill > 0) found.push(`${width} ${colorScheme}: ${spill} pixels over the side`);
      }
    await driver.page.setViewportSize({ width: 1280, height: 800 });
    return found;
  }

  test('while a file is chosen, and when one cannot be read', async () => {
    await driver.tab.goto(readerUrl(driver));
    await sees(driver.tab, 'Drop a PDF anywhere');
    expect(await everyLook()).toEqual([]);
    await pickFile(driver, files.path('noise.pdf'));
    await sees(driver.tab, 'This file is not a PDF');
    expect(await everyLook()).toEqual([]);
  });

  test('while a password is asked for', async () => {
    await pickFile(driver, files.path('locked.pdf'));
    await sees(driver.tab, 'This PDF is locked');
    expect(await everyLook()).toEqual([]);
  });

  test('while a file is read, framed and kept from', async () => {
    await pickFile(driver, files.path('waves.pdf'));
    await lineAt(driver.tab, 'Surface gravity waves');
    expect(await everyLook()).toEqual([]);
    await clickTool(driver, 'Keep a frame');
    await sees(driver.tab, 'Drag over a page');
    expect(await everyLook()).toEqual([]);
    await driver.page.locator('.pdf-frame').press('Enter');
    await openedSlip(driver.tab);
    expect(await everyLook()).toEqual([]);
  });

  test('on a page without text', async () => {
    await pickFile(driver, files.path('scan.pdf'));
    await sees(driver.tab, 'No text can be selected');
    expect(await everyLook()).toEqual([]);
  });
});
