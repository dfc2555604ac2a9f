import axe, { type AxeResults } from 'axe-core';
import { writeFile } from 'node:fs/promises';
import type { Page } from 'playwright-core';
import sharp from 'sharp';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import type { Clip } from '#lib/model/clip.ts';
import type { Picture } from '#lib/model/picture.ts';
import type { Source } from '#lib/model/source.ts';
import { CollectionModel } from '#tests/data/web-annotation.ts';
import { type AnyDriver, BROWSERS, filesOf, rowsOf } from '#tests/tools/demo/pdfs/reader.ts';
import { downloadOf } from '#tests/tools/downloads.ts';
import { click, fill, sees, textOf, until } from '#tests/tools/driver.ts';
import { bringInSyllabus } from '#tests/tools/main-job.ts';

const RULES = JSON.stringify({
  runOnly: ['wcag2a', 'wcag2aa', 'wcag21a', 'wcag21aa', 'wcag22aa', 'best-practice'],
  resultTypes: ['violations'],
});

/** What axe finds, narrow and wide, light and dark, and what spills over the side. Leaves a picture of each look. */
async function everyLook(page: Page, name: string): Promise<string[]> {
  const found: string[] = [];
  for (const width of [360, 1280])
    for (const colorScheme of ['light', 'dark'] as const) {
      await page.setViewportSize({ width, height: 900 });
      await page.emulateMedia({ colorScheme });
      await page.evaluate(axe.source);
      const { violations } = (await page.evaluate(`axe.run(document, ${RULES})`)) as AxeResults;
      found.push(...violations.map(({ id, nodes }) => `${id}: ${nodes.map(({ html }) => html).join(' | ')}`));
      const spill = await page.evaluate(() => document.documentElement.scrollWidth - innerWidth);
      if (spill > 0) found.push(`${width} ${colorScheme}: ${spill} pixels over the side`);
      const shots = process.env['PLUMBLINE_SHOTS'];
      if (shots)
        await writeFile(
          `${shots}/${name}-${width}-${colorScheme}.png`,
          await page.screenshot({ fullPage: true }),
        );
    }
  await page.emulateMedia({ colorScheme: null });
  await page.setViewportSize({ width: 1280, height: 900 });
  return found;
}

/** A photograph as a phone saves it: on its side, with a note to turn it and one of the place. Red where its top left is. */
async function photograph(): Promise<Buffer> {
  const upright = sharp({
    create: { width: 1500, height: 2000, channels: 3, background: '#ffffff' },
  }).composite([
    {
      input: await sharp({ create: { width: 300, height: 300, channels: 3, background: '#ff0000' } })
        .png()
        .toBuffer(),
      left: 0,
      top: 0,
    },
  ]);
  const turned = await sharp(await upright.png().toBuffer())
    .rotate(-90)
    .jpeg({ quality: 95 })
    .toBuffer();
  return sharp(turned)
    .withExif({
      IFD0: { Orientation: '6', Make: 'Plumbline test camera' },
      IFD3: {
        GPSLatitudeRef: 'N',
        GPSLatitude: '51/1 30/1 0/1',
        GPSLongitudeRef: 'W',
        GPSLongitude: '0/1 7/1 0/1',
      },
    })
    .withMetadata({ orientation: 6 })
    .jpeg({ quality: 95 })
    .toBuffer();
}

describe.each(BROWSERS)('own notes in %s', (name, drive) => {
  let driver: AnyDriver;
  let files: Awaited<ReturnType<typeof filesOf>>;

  beforeAll(async () => {
    driver = await drive();
    const jpeg = await photograph();
    files = await filesOf({
      'sheet.jpg': jpeg,
      'damaged.jpg': jpeg.subarray(0, 700),
      'large.png': await sharp({ create: { width: 10_000, height: 10_000, channels: 3, background: '#fff' } })
        .png()
        .toBuffer(),
      'phone.heic': Buffer.from('\0\0\0\x18ftypheic\0\0\0\0mif1heic'),
      'heavy.jpg': Buffer.concat([jpeg, Buffer.alloc(31_000_000)]),
      'lesson.html': Buffer.from(
        '<!doctype html><meta charset="utf-8"><title>A lesson</title><h2>Surge</h2><ul><li>Wind <b>piles</b> water up</li>' +
          '<li>H<sub>2</sub>O, <math><msqrt><mi>g</mi><mi>h</mi></msqrt></math></li></ul><p>שלום 😀</p>',
      ),
    });
    await bringInSyllabus(driver, '1 Waves\n2 Tides');
  });
  afterAll(async () => {
    await driver?.close();
    await files?.remove();
  });

  const tab = () => driver.tab;
  /** The two drivers call the key by two names. */
  const control = name === 'Firefox' ? 'Ctrl' : 'Control';
  const looks = async (name: string): Promise<string[]> =>
    'firefox' in driver ? [] : everyLook(driver.page, `${name}`);
  const goToOwn = async () => {
    await tab().gotoDesk('#/own');
    await sees(tab(), 'Keep the notes');
  };
  const focusOn = (label: string) =>
    until(`the field “${label}”`, () =>
      tab().run((wanted) => {
        const found = [...document.querySelectorAll('label')]
          .filter((one) => one.textContent.trim() === wanted)
          .at(-1);
        (found?.control as HTMLElement | null | undefined)?.focus();
        return document.activeElement === found?.control && found !== undefined;
      }, label),
    );
  const addSheet = async (name: string) => {
    if ('firefox' in driver) await (await driver.firefox.find('#own-sheet')).type(files.path(name));
    else await driver.page.setInputFiles('#own-sheet', files.path(name));
  };
  const ownClips = async () => {
    const sources = await rowsOf<Source>(tab(), 'sources');
    const own = new Set(sources.filter(({ kind }) => kind === 'own').map(({ id }) => id));
    return (await rowsOf<Clip>(tab(), 'clips')).filter(({ sourceId }) => own.has(sourceId));
  };

  test('the clips page leads there; what is typed is still there after a reload', async () => {
    await tab().gotoDesk('#/clips');
    await click(tab(), 'Add own notes');
    await sees(tab(), 'Keep the notes');
    expect(await looks('own-empty')).toEqual([]);
    await focusOn('Notes');
    await tab().type('Spring tides: $F = 2r^3$ and $\\frac{1$ too');
    await sees(tab(), 'does not parse');
    // At once, before typing has rested.
    await tab().gotoDesk('#/own');
    await until('the draft', () =>
      tab().run(() => document.querySelector('textarea')?.value.startsWith('Spring tides') ?? false),
    );
    expect(await tab().run(() => document.querySelector('textarea')!.value)).toBe(
      'Spring tides: $F = 2r^3$ and $\\frac{1$ too',
    );
  });

  test('rich text that is copied from a page is pasted with its lists and formulas', async () => {
    await tab().goto(`file://${files.path('lesson.html')}`);
    await sees(tab(), 'Surge');
    await tab().clickAt(300, 500);
    await tab().press(`${control}+a`);
    await tab().press(`${control}+c`);
    await goToOwn();
    await focusOn('Notes');
    await tab().run(() => {
      const field = document.querySelector('textarea')!;
      field.setSelectionRange(field.value.length, field.value.length);
    });
    await tab().press(`${control}+v`);
    await until('the pasted notes', () =>
      tab().run(() => !!document.querySelector('.own-passage ul li b, .own-passage ul li strong')),
    );
    expect(await tab().run(() => document.querySelector('.own-passage math msqrt') !== null)).toBe(true);
    await focusOn('More notes');
    await tab().type('typed below');
  });

  test('a photographed sheet is upright, no larger than is kept, and says nothing of the place', async () => {
    await addSheet('sheet.jpg');
    await focusOn('What is on it');
    await tab().type('Sketch of a surge');
    // Pictures, pasted notes and captions outlast a reload as well.
    await goToOwn();
    await until('the sheet', () =>
      tab().run(
        () => (document.querySelector<HTMLImageElement>('.own-piece > img')?.naturalWidth ?? 0) === 1200,
      ),
    );
    await focusOn('What is on it');
    expect(await looks('own-full')).toEqual([]);
    await click(tab(), 'Keep the notes');
    await sees(tab(), 'Kept as 1 clip.');
    expect(await looks('own-kept')).toEqual([]);
    const [clip] = await ownClips();
    expect(clip!.text).toContain(
      'Spring tides: \\( F = 2r^3 \\) and \\( \\frac{1 \\) too\nSurge\n- Wind piles water up',
    );
    expect(clip!.text).toContain('שלום 😀\ntyped below\n');
    expect(clip!.text).toContain('Sketch of a surge');
    const [picture] = await rowsOf<Picture>(tab(), 'pictures');
    expect(picture).toMatchObject({ width: 1200, height: 1600, alt: 'Sketch of a surge' });
    const look = await tab().run(async () => {
      const request = indexedDB.open('plumbline');
      const db = await new Promise<IDBDatabase>((done) => (request.onsuccess = () => done(request.result)));
      const all = db.transaction('pictures').objectStore('pictures').getAll();
      const rows = await new Promise<{ bytes: Blob }[]>((done) => (all.onsuccess = () => done(all.result)));
      db.close();
      const text = new TextDecoder('latin1').decode(await rows[0]!.bytes.arrayBuffer());
      const bitmap = await createImageBitmap(rows[0]!.bytes);
      const pen = new OffscreenCanvas(bitmap.width, bitmap.height).getContext('2d')!;
      pen.drawImage(bitmap, 0, 0);
      const at = (x: number, y: number) => [...pen.getImageData(x, y, 1, 1).data.slice(0, 3)];
      return {
        notes: ['Exif', 'GPS', 'Plumbline test camera', 'http://ns.adobe.com'].filter((one) =>
          text.includes(one),
        ),
        corners: [at(60, 60), at(1140, 60), at(60, 1540), at(1140, 1540)],
      };
    });
    expect(look.notes).toEqual([]);
    // The file itself does say all that.
    const photo = await photograph();
    expect(photo.toString('latin1')).toContain('Plumbline test camera');
    const { exif, orientation } = await sharp(photo).metadata();
    expect(orientation).toBe(6);
    // The tag that leads to the place (EXIF 2.3, tag 8825), in either order of bytes.
    expect(
      [
        [0x88, 0x25],
        [0x25, 0x88],
      ].some((tag) => exif!.includes(Buffer.from(tag))),
    ).toBe(true);
    const isRed = ([r, g, b]: number[]) => r! > 200 && g! < 80 && b! < 80;
    expect(look.corners.map(isRed)).toEqual([true, false, false, false]);
  });

  test('pictures that cannot be taken say why, and what was typed stays', async () => {
    await goToOwn();
    await focusOn('Notes');
    await tab().type('still here');
    for (const [name, words] of [
      ['damaged.jpg', 'damaged.jpg: This picture cannot be read'],
      ['large.png', 'large.png: This picture has 100 million pixels'],
      ['phone.heic', 'phone.heic: This browser cannot read this kind of picture'],
      ['heavy.jpg', 'heavy.jpg: This file has 31 MB'],
      ['lesson.html', 'lesson.html: This file is not a picture'],
    ] as const) {
      await addSheet(name);
      await sees(tab(), words);
    }
    expect(await tab().run(() => document.querySelector('textarea')!.value)).toBe('still here');
    expect(await looks('own-trouble')).toEqual([]);
    await fill(tab(), 'Notes', '');
  });

  test('a long note is cut at its headings, if the student wants it so', async () => {
    await goToOwn();
    await fill(tab(), 'Notes', '## Neap tides\n\n- **Half moon** weak\n\n## Ebb\n\nGoes out.');
    await tab().run(() => {
      const boxes = [...document.querySelectorAll<HTMLInputElement>('input[type=checkbox]')];
      boxes.find((one) => one.labels![0]!.textContent.includes('Markdown'))!.click();
    });
    await sees(tab(), '2 clips, one for each heading');
    await tab().run(() => document.querySelectorAll<HTMLInputElement>('input[name=own-split]')[1]!.click());
    expect(await looks('own-split')).toEqual([]);
    await click(tab(), 'Keep the notes');
    await sees(tab(), 'Kept as 2 clips.');
    await click(tab(), 'Look at it');
    await sees(tab(), 'Own notes, ');
    const [clip] = (await ownClips()).filter(({ pictureIds }) => pictureIds.length > 0);
    await tab().gotoDesk(`#/clip/${clip!.id}`);
    await until('the picture', () =>
      tab().run(() => (document.querySelector<HTMLImageElement>('.passage img')?.naturalWidth ?? 0) === 1200),
    );
    expect(await tab().run(() => document.querySelectorAll('.provenance a').length)).toBe(0);
    expect(await looks('own-clip')).toEqual([]);
  });

  test('all of it goes out: a page that opens by itself, Markdown, and web annotations', async () => {
    await tab().gotoDesk('#/out');
    await sees(tab(), 'Take your notes with you');
    expect(await looks('out')).toEqual([]);
    const page = await downloadOf(driver, () => click(tab(), 'Save as a file'));
    expect(page.name).toBe('Foundation Oceanography notes.html');
    const format = (index: number) =>
      tab().run(
        (at) => document.querySelectorAll<HTMLInputElement>('input[name=out-format]')[at]!.click(),
        index,
      );
    await format(1);
    const markdown = await downloadOf(driver, () => click(tab(), 'Save as a file'));
    expect(markdown.name).toBe('Foundation Oceanography notes.md');
    expect(markdown.text).toContain('Spring tides: $F = 2r^3$ and $\\frac{1$ too');
    await format(2);
    const annotations = await downloadOf(driver, () => click(tab(), 'Save as a file'));
    expect(annotations.name).toBe('Foundation Oceanography clips.jsonld');
    expect(CollectionModel.parse(JSON.parse(annotations.text)).total).toBe(3);
    const shown = await filesOf({ 'notes.html': Buffer.from(page.text) });
    await tab().goto(`file://${shown.path('notes.html')}`);
    await sees(tab(), 'Sketch of a surge');
    expect(await textOf(tab())).toContain('Own notes, ');
    const seen = await tab().run(() => ({
      pictures: [...document.images].map(({ naturalWidth }) => naturalWidth),
      formulas: document.querySelectorAll('math msqrt').length,
      asked: performance.getEntriesByType('resource').filter(({ name }) => !name.startsWith('data:')).length,
    }));
    expect(seen).toEqual({ pictures: [1200], formulas: 1, asked: 0 });
    expect(await looks('out-page')).toEqual([]);
    await shown.remove();
  });

  test('note lines come in from a Markdown file, and its headings find their topics', async () => {
    const notes = await filesOf({
      'notes.md': Buffer.from('# Waves\n\n- **Swell** from $x$ afar\n  - deep\n\n# Weather\n\n- wind'),
    });
    await tab().gotoDesk('#/out');
    await sees(tab(), 'Bring note lines in');
    if ('firefox' in driver) await (await driver.firefox.find('#notes-file')).type(notes.path('notes.md'));
    else await driver.page.setInputFiles('#notes-file', notes.path('notes.md'));
    await sees(tab(), 'What the file holds');
    expect(await looks('out-in')).toEqual([]);
    await click(tab(), 'Add 2 lines');
    await sees(tab(), '2 lines are added to your notes.');
    expect(await rowsOf(tab(), 'lines')).toHaveLength(2);
    await notes.remove();
  });
});
