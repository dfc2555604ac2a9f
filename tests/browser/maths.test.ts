import { readFile } from 'node:fs/promises';
import { createRequire } from 'node:module';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { driveChromium } from '#tests/tools/chromium-driver.ts';
import { startLearningPages } from '#tests/tools/demo/server.ts';
import { type BrowserDriver, select, until } from '#tests/tools/driver.ts';
import { driveFirefox } from '#tests/tools/firefox-driver.ts';
import { clickOnSlip, keepIt, openLastClip, slipOf } from '#tests/tools/keep-from-popup.ts';
import { bringInSyllabus } from '#tests/tools/main-job.ts';
import { lookAtSlip } from '#tests/tools/slip-look.ts';
import { type Served, type Served127, serve } from '#tests/tools/serve.ts';
import { readChapter } from '#tests/unit/capture/find/refind/pages.ts';
import { TYPESETTERS } from '#tests/unit/capture/maths/typesetters.ts';

const SYLLABUS = '1 Waves\n\t1.1 Dispersion of waves\n\t1.2 Seiches';

const FORMULAS = [
  { tex: 'c = \\sqrt{\\frac{g\\lambda}{2\\pi}}', display: false },
  { tex: '\\omega^2 = gk\\tanh(kh)', display: true },
];

/** A page whose sentence begins and ends in a formula. */
async function pageBy(name: string): Promise<string> {
  const markup = await TYPESETTERS.find((typesetter) => typesetter.name === name)!.typeset(FORMULAS);
  const [inline, apart] = markup;
  return `<!doctype html><title>Set by ${name}</title><h1>Speed of waves</h1>
<div id="passage">${inline} is the speed in deep water, from the relation ${apart}</div>`;
}

/** A chapter of the documentation of mpmath as Debian has it, with the MathJax 3 that it asks another host for. */
async function realPage(): Promise<Record<string, Served>> {
  const chapter = await readChapter('calculus/odes');
  const script = await readFile(createRequire(import.meta.url).resolve('mathjax3/es5/tex-mml-chtml.js'));
  return {
    '/odes': chapter.replace(/https:[^"]*mathjax@3[^"]*/, '/mathjax.js'),
    '/mathjax.js': { body: script, headers: { 'content-type': 'text/javascript' } },
  };
}

const NAMES = TYPESETTERS.map(({ name }) => name);
/** Firefox takes the same script: what differs between browsers is selecting, not the markup. */
const SOME = ['katex', 'mathjax-3-svg', 'mathjax-2-svg', 'native-mathml'];

describe.each([
  ['Chromium', driveChromium, NAMES],
  ['Firefox', driveFirefox, SOME],
] as const)('formulas in %s', (_name, drive, names) => {
  let driver: BrowserDriver;
  let pages: Served127;
  let lessons: Awaited<ReturnType<typeof startLearningPages>>;

  beforeAll(async () => {
    const bodies = await Promise.all(NAMES.map(pageBy));
    const set = Object.fromEntries(NAMES.map((name, index) => [`/${name}`, bodies[index]!]));
    pages = await serve({ ...set, ...(await realPage()) });
    lessons = await startLearningPages();
    driver = await drive();
    await bringInSyllabus(driver, SYLLABUS);
  });
  afterAll(async () => {
    await driver?.close();
    await pages?.close();
    await lessons?.close();
  });

  /** Keeps the selection; gives the formulas of the clip as the desk shows them. */
  const kept = async () => {
    await driver.tab.openSlip();
    await slipOf(driver);
    await keepIt(driver);
    return lastClip();
  };
  const lastClip = async () => {
    await openLastClip(driver);
    return driver.tab.run(() => {
      const passage = document.querySelector('.passage')!;
      return {
        formulas: [...passage.querySelectorAll('math')].map((math) => ({
          tex: math.querySelector('annotation[encoding="application/x-tex"]')?.textContent.replace(/\s/g, ''),
          isApart: math.getAttribute('display') === 'block',
          isDrawn: math.querySelector('mi') !== null && math.getBoundingClientRect().width > 20,
        })),
        words: [...passage.childNodes]
          .filter(({ nodeType }) => nodeType === Node.TEXT_NODE)
          .map((node) => node.textContent!.trim())
          .join(' '),
      };
    });
  };

  test.each(names)(
    'as %s sets them: each once, with letters and TeX, apart where it was apart',
    async (name) => {
      await driver.tab.goto(`${pages.origin}/${name}`);
      await select(driver.tab, '#passage');
      // From within the first formula to within the last, as a hasty mouse does.
      await driver.tab.run(() => {
        const passage = document.querySelector('#passage')!;
        const walker = document.createTreeWalker(passage, NodeFilter.SHOW_ALL);
        const nodes: Node[] = [];
        while (walker.nextNode()) nodes.push(walker.currentNode);
        const [first, last] = [passage.firstElementChild!, passage.lastElementChild!];
        const into = (one: Element) =>
          nodes.filter((node) => one.contains(node) && node !== one).at(1) ?? one;
        const range = document.createRange();
        range.setStartBefore(into(first));
        range.setEndAfter(into(last));
        getSelection()!.removeAllRanges();
        getSelection()!.addRange(range);
      });
      const { formulas } = await kept();
      expect(formulas).toHaveLength(2);
      expect(formulas.map(({ isApart }) => isApart)).toEqual([false, true]);
      expect(formulas.every(({ isDrawn }) => isDrawn)).toBe(true);
      expect(formulas[0]!.tex).toMatch(/^c=\\sqrt\{?/);
      expect(formulas[1]!.tex).toContain('\\tanh');
    },
  );

  test('as a script in the page sets them', async () => {
    await driver.tab.goto(`${lessons.origin}/lagoonery/seiche`);
    await until('the maths', () =>
      driver.tab.run(() => document.querySelectorAll('#periods mjx-container').length === 5),
    );
    await select(driver.tab, '#periods');
    const { formulas } = await kept();
    expect(formulas.map(({ isApart }) => isApart)).toEqual([false, false, true, false, true]);
  });

  test('a chapter of real documentation, whole: every formula once', async () => {
    await driver.tab.goto(`${pages.origin}/odes`);
    const [inline, apart] = await until('the maths', () =>
      driver.tab.run(() => {
        const places = [...document.querySelectorAll('[role=main] .math')];
        const isSet = places.length > 0 && places.every((place) => place.querySelector('mjx-container'));
        return (
          isSet && [
            places.filter((one) => one.localName === 'span').length,
            places.filter((one) => one.localName === 'div').length,
          ]
        );
      }),
    );
    expect([inline, apart]).toEqual([30, 2]);
    await select(driver.tab, '[role=main] p');
    await driver.tab.openSlip();
    await slipOf(driver);
    await clickOnSlip(driver, '.scopes button:last-child');
    await until('the parts', () =>
      driver.tab.inSlip((root) => root!.querySelectorAll('.parts input').length > 5),
    );
    await driver.tab.press('Enter');
    await until('it to be kept', async () => (await lookAtSlip(driver.tab))?.text.startsWith('Kept'));
    await driver.tab.press('Escape');
    const { formulas, words } = await lastClip();
    expect(formulas.filter(({ isApart }) => !isApart)).toHaveLength(inline);
    expect(formulas.filter(({ isApart }) => isApart)).toHaveLength(apart);
    expect(formulas.filter(({ tex }) => !tex)).toEqual([]);
    expect(words).not.toMatch(/\\[([]/);
  });
});
