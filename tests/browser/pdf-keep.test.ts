import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import type { Clip } from '#lib/model/clip.ts';
import { FRAGMENT_OF } from '#lib/model/selector.ts';
import type { Source } from '#lib/model/source.ts';
import { nameByContents } from '#lib/ui/pdf/pdf-file.ts';
import { scanned, twoColumns, waveNote } from '#tests/tools/demo/pdfs/papers.ts';
import {
  type AnyDriver,
  BROWSERS,
  SYLLABUS,
  clickTool,
  drag,
  drawnPages,
  filesOf,
  lineAt,
  lookAtPdfSlip,
  openedSlip,
  pickFile,
  rowsOf,
  seesSlip,
} from '#tests/tools/demo/pdfs/reader.ts';
import { sees, textOf, until } from '#tests/tools/driver.ts';
import { bringInSyllabus } from '#tests/tools/main-job.ts';

let files: Awaited<ReturnType<typeof filesOf>>;
beforeAll(async () => {
  files = await filesOf({
    'waves.pdf': waveNote(),
    'columns.pdf': twoColumns(),
    'scan.pdf': scanned(),
  });
});
afterAll(() => files?.remove());

describe.each(BROWSERS)('from a PDF is kept in %s', (_name, drive) => {
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
  const keep = async () => {
    await driver.tab.press('Enter');
    await seesSlip(driver.tab, ({ text }) => text.startsWith('Kept'));
    await driver.tab.press('Escape');
  };

  test('a passage over lines and an equation: whole words, raised letters, page and place', async () => {
    const from = await open('waves.pdf', 'Surface gravity waves');
    const to = await lineAt(driver.tab, 'water wave grows');
    // On the way the pointer passes over blank parts of the page.
    await drag(driver, [from.start, { x: from.end.x + 150, y: from.end.y + 30 }, to.end]);
    await driver.tab.openSlip();
    const look = await openedSlip(driver.tab);
    expect(look.preview).toBe(
      '<p>Surface gravity waves on water of depth h obey a dispersion relation between their angular ' +
        'frequency and their wavenumber. Long waves travel faster than short ones, so that a storm far away is ' +
        'announced by swell.</p><p>ω<sup>2</sup> = gk tanh( kh )</p><p>In the deep-water limit the depth no ' +
        'longer matters. The phase speed of a deep-water wave grows with the square root of its wavelength.</p>',
    );
    expect(look.text).toContain('1.1 Dispersion relation of surface waves');
    await driver.tab.type('Long waves are faster.');
    await keep();
    const [clip] = await rowsOf<Clip>(driver.tab, 'clips');
    expect(clip!.selectors).toEqual([
      {
        type: 'TextQuoteSelector',
        exact: expect.stringMatching(/^Surface .+ a disper-\nsion relation .+ wavelength\.$/s) as string,
        prefix: expect.stringContaining('The dispersion relation\n') as string,
        suffix: expect.stringContaining('\nWhat a wave looks like') as string,
      },
      {
        type: 'FragmentSelector',
        conformsTo: FRAGMENT_OF.pdf,
        value: expect.stringMatching(/^page=1&viewrect=72,146\.2,[\d.]+,[\d.]+$/) as string,
      },
    ]);
    expect((await rowsOf<Source>(driver.tab, 'sources'))[0]).toMatchObject({
      kind: 'pdf',
      url: await nameByContents(new Blob([new Uint8Array(waveNote())])),
      title: 'Waves on water of any depth',
    });
    await driver.tab.gotoDesk('#/clips');
    await sees(driver.tab, 'All (1)');
    expect(await textOf(driver.tab)).toContain('obey a dispersion relation between');
  });

  test('the same passage again: it is known, not doubled', async () => {
    const from = await open('waves.pdf', 'Surface gravity waves');
    const to = await lineAt(driver.tab, 'water wave grows');
    await drag(driver, [from.start, to.end]);
    await clickTool(driver, 'Keep the selected passage');
    expect((await openedSlip(driver.tab)).text).toContain('You kept this passage before');
    await driver.tab.press('Escape');
    await until('the slip to go', async () => (await lookAtPdfSlip(driver.tab)) === null);
  });

  test('two columns, in the order of reading', async () => {
    const from = await open('columns.pdf', 'The tide is a very long wave');
    const to = await lineAt(driver.tab, 'bulges of water');
    await drag(driver, [from.start, to.end]);
    await driver.tab.openSlip();
    expect((await openedSlip(driver.tab)).preview).toBe(
      '<p>The tide is a very long wave that the pull of the Moon and the Sun keeps going. It rises and falls ' +
        'about twice a day, since the Earth turns under two bulges of water.</p>',
    );
    await driver.tab.press('Escape');
  });

  test('nothing, when nothing is selected: that is told', async () => {
    await open('waves.pdf', 'Surface gravity waves');
    await driver.tab.openSlip();
    await sees(driver.tab, 'Nothing is selected');
  });

  test('a frame by mouse: the picture sharper than the screen, the text under it, and its place', async () => {
    const { start } = await open('waves.pdf', 'Figure 1. Two wavelengths');
    await clickTool(driver, 'Keep a frame');
    await sees(driver.tab, 'Drag over a page');
    const box = await driver.tab.run(() => {
      const { left, right } = document.querySelector('.pdf-page')!.getBoundingClientRect();
      return { left, right };
    });
    await drag(driver, [
      { x: box.left + 30, y: start.y - 120 },
      { x: box.right - 60, y: start.y + 12 },
    ]);
    const look = await openedSlip(driver.tab);
    expect(look.pictures).toHaveLength(1);
    expect(Math.max(look.pictures[0]!.width, look.pictures[0]!.height)).toBe(1600);
    expect(look.preview).toContain('alt="Figure 1. Two wavelengths of a swell."');
    await keep();
    const clips = await rowsOf<Clip>(driver.tab, 'clips');
    const { id } = clips.find(({ pictureIds }) => pictureIds.length > 0)!;
    await driver.tab.gotoDesk(`#/clip/${id}`);
    await until('the picture in the desk', () =>
      driver.tab.run(() => {
        const picture = document.querySelector<HTMLImageElement>('.passage img');
        return picture?.complete && Math.max(picture.naturalWidth, picture.naturalHeight) === 1600;
      }),
    );
    const link = await until('the way back to the passage', () =>
      driver.tab.run(
        () =>
          [...document.querySelectorAll('a')].find(({ textContent }) => textContent === 'Open at the passage')
            ?.href,
      ),
    );
    expect(link).toMatch(/\/pdf\.html#source=[\w-]{36}&page=1&viewrect=[\d.]+,[\d.]+,[\d.]+,[\d.]+$/);
  });

  test('a frame by keyboard alone', async () => {
    await pickFile(driver, files.path('scan.pdf'));
    await sees(driver.tab, 'No text can be selected on page 1');
    await until('the page', async () => (await drawnPages(driver.tab)).length === 1);
    await driver.tab.run(() => {
      const buttons = [...document.querySelectorAll<HTMLButtonElement>('.pdf-tools button')];
      buttons.find(({ textContent }) => textContent === 'Keep a frame')!.focus();
    });
    await driver.tab.press('Enter');
    const frame = () =>
      until('the frame', () =>
        driver.tab.run(() => {
          const box = document.querySelector('.pdf-frame')?.getBoundingClientRect();
          return (
            box && document.activeElement?.className === 'pdf-frame' && [box.x, box.y, box.width, box.height]
          );
        }),
      );
    const [x, y, width, height] = (await frame()) as [number, number, number, number];
    await driver.tab.press('ArrowRight');
    await driver.tab.press('Shift+ArrowDown');
    const changed = (await frame()) as [number, number, number, number];
    expect(changed[0]).toBeGreaterThan(x + 10);
    expect(changed[1]).toBeCloseTo(y, 0);
    expect(changed[2]).toBeCloseTo(width, 0);
    expect(changed[3]).toBeGreaterThan(height + 10);
    await driver.tab.press('Enter');
    const look = await openedSlip(driver.tab);
    expect(look.pictures).toHaveLength(1);
    await driver.tab.press('Escape');
  });
});
