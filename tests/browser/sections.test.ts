import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { driveChromium } from '#tests/tools/chromium-driver.ts';
import { startLearningPages } from '#tests/tools/demo/server.ts';
import { type BrowserDriver, click, select, sees, until } from '#tests/tools/driver.ts';
import { driveFirefox } from '#tests/tools/firefox-driver.ts';
import { openLastClip } from '#tests/tools/keep-from-popup.ts';
import { bringInSyllabus } from '#tests/tools/main-job.ts';
import { lookAtSlip } from '#tests/tools/slip-look.ts';

const SYLLABUS =
  '1 Hydrostatics\n\t1.1 Hydrostatic balance\n\t1.2 Pressure and depth\n2 Waves\n\t2.1 Dispersion\n\t2.2 Seiches';

/** A part as the slip lists it. */
interface PartLook {
  name: string;
  checked: boolean;
}

describe.each([
  ['Chromium', driveChromium],
  ['Firefox', driveFirefox],
] as const)('more than was selected, by keyboard in %s', (_name, drive) => {
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

  const openOn = async (path: string, css: string) => {
    await driver.tab.goto(pages.origin + path);
    await until('the maths', () =>
      driver.tab.run(() => document.querySelector('math, .katex, mjx-container') !== null),
    );
    await select(driver.tab, css);
    await driver.tab.openSlip();
    await until('the slip', async () => (await lookAtSlip(driver.tab))?.focus === 'own-words');
  };
  const focused = () => driver.tab.inSlip((root) => root!.activeElement!.textContent.trim());
  /** Goes back with Shift+Tab to the button with this name, and presses it. */
  const pressButton = async (name: string) => {
    for (let stops = 0; (await focused()) !== name; stops++) {
      if (stops > 40) throw new Error(`Shift+Tab does not lead to ${name}`);
      await driver.tab.press('Shift+Tab');
    }
    await driver.tab.press('Enter');
  };
  const parts = (): Promise<PartLook[]> =>
    driver.tab.inSlip((root) =>
      [...root!.querySelectorAll<HTMLInputElement>('.parts input')].map((box) => ({
        name: box.getAttribute('aria-label')!,
        checked: box.checked,
      })),
    );
  const widenTo = async (name: string) => {
    await pressButton(name);
    return until(`parts after ${name}`, async () => {
      const listed = await parts();
      return listed.length > 0 && listed;
    });
  };
  const atPart = () => driver.tab.inSlip((root) => root!.activeElement!.getAttribute('aria-label') ?? '');
  const keep = async () => {
    await driver.tab.press('Enter');
    await until('it to be kept', async () => (await lookAtSlip(driver.tab))?.text.startsWith('Kept'));
    await driver.tab.press('Escape');
  };
  /** Opens the clip that was kept last; gives its passage. */
  const lastClip = async () => {
    await openLastClip(driver);
    return driver.tab.run(() => {
      const passage = document.querySelector('.passage')!;
      return { text: passage.textContent, formulas: passage.querySelectorAll('math').length };
    });
  };

  test('one sentence becomes its section, a part is dropped, and the rest is kept with its source', async () => {
    await openOn('/ebbledore/hydrostatic-balance', '#force-balance p');
    const listed = await widenTo('Keep this section');
    expect(listed.map(({ name }) => name.slice(0, 24))).toEqual([
      'One slab at a time',
      'Picture still water, and',
      // The drawing and what stands below it are one part.
      'Forces on a thin slab of',
      expect.stringMatching(/^The water below pushes/),
      expect.any(String),
      expect.stringMatching(/^Divide by/),
      expect.any(String),
      'The minus sign says only',
    ]);
    expect(listed.every(({ checked }) => checked)).toBe(true);
    expect(await atPart()).toBe('One slab at a time');
    await driver.tab.press('ArrowDown');
    await driver.tab.press('ArrowDown');
    expect(await atPart()).toMatch(/^Forces on a thin slab/);
    await driver.tab.press('Space');
    await until('the part to be dropped', async () => !(await parts())[2]!.checked);
    await keep();
    const clip = await lastClip();
    expect(clip.text).toMatch(/^One slab at a time\s*Picture still water/);
    expect(clip.text).toContain('The minus sign says only');
    expect(clip.text).not.toMatch(/A slab of thickness|Forces on a thin slab/);
    expect(clip.text).not.toContain('From slope to pressure');
    expect(clip.formulas).toBe(9);
    await sees(driver.tab, '14 February 2023');
    const links = await driver.tab.run(() =>
      [...document.querySelectorAll<HTMLAnchorElement>('.provenance a')].map(({ pathname }) => pathname),
    );
    expect(links).toEqual(['/ebbledore/hydrostatic-balance', '/ebbledore/licence']);
    await click(driver.tab, 'Copy the reference');
    await sees(driver.tab, 'Copied.');
  });

  test('back to the selection: the passage is the sentence again', async () => {
    await openOn('/ebbledore/hydrostatic-balance', '#force-balance p');
    const before = (await lookAtSlip(driver.tab))!.passage;
    await widenTo('Keep this section');
    await pressButton('Back to my selection');
    const look = await until('the words to have the focus', async () => {
      const now = await lookAtSlip(driver.tab);
      return now?.focus === 'own-words' && now;
    });
    expect(look.passage).toBe(before);
    await driver.tab.press('Escape');
  });

  test.each([
    ['KaTeX', '/quillhaven/pressure-and-depth', '#column-weight p', '.katex'],
    ['MathJax, set in the browser', '/lagoonery/seiche', '#periods p', 'mjx-container'],
    ['MathJax with tables', '/lagoonery/water-waves', '#dispersion p', 'mjx-container'],
  ])(
    'the main explanation of a page with %s: each formula once, nothing around it',
    async (_maths, path, css, maths) => {
      await openOn(path, css);
      const page = await driver.tab.run(
        (formula) => ({
          formulas: document.querySelectorAll(`article ${formula}`).length,
          headings: [...document.querySelectorAll('article h2')].map(({ textContent }) => textContent.trim()),
          around: [...document.querySelectorAll('nav a, footer p, header strong, aside p, .byline')].map(
            ({ textContent }) => textContent.trim(),
          ),
        }),
        maths,
      );
      expect(page.formulas).toBeGreaterThan(5);
      expect(page.around.length).toBeGreaterThan(3);
      const listed = await widenTo('Keep the main explanation');
      expect(listed.map(({ name }) => name)).toEqual(expect.arrayContaining(page.headings));
      expect((await lookAtSlip(driver.tab))!.formulas).toBe(page.formulas);
      await keep();
      const clip = await lastClip();
      expect(clip.formulas).toBe(page.formulas);
      for (const heading of page.headings) expect(clip.text).toContain(heading);
      for (const words of page.around) expect(clip.text).not.toContain(words);
    },
  );

  test('a page that is far too long says so, and the selection can still be kept', async () => {
    await openOn('/deep-water/long', '#opening');
    await pressButton('Keep the main explanation');
    const look = await until('the refusal', async () => {
      const now = await lookAtSlip(driver.tab);
      return now?.text.includes('a clip holds') && now;
    });
    expect(look.text).toMatch(/That would be \d{7} characters, and a clip holds 100000/);
    expect(look.passage).toContain('The speed of a long wave');
    await driver.tab.press('Escape');
  });
});
