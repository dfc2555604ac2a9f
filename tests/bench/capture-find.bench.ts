import { fileURLToPath } from 'node:url';
import type { Page } from 'playwright-core';
import { build } from 'vite';
import { launchChromium } from '../tools/chromium.ts';
import { type Level, type Tally, levels } from '../unit/capture/find/refind/experiment.ts';
import type { refind } from '../unit/capture/find/refind/in-page.ts';
import { CHAPTERS, MEGABYTE, readChapter } from '../unit/capture/find/refind/pages.ts';
import { builtExtension } from './extension.ts';
import { type Figure, brief, figure } from './figure.ts';
import { median } from './timing.ts';

const LIBRARY = 'dom-anchor-text-quote';
/** The levels for which so many passages must be found. */
const HELD_TO: Level[] = ['words', 'paragraphs', 'markup', 'characters'];
const LEAST_RIGHT = 97;
const CLIPS = 100;
const REPEATS = 7;

const path = (file: string): string => fileURLToPath(new URL(`../../${file}`, import.meta.url));

/** One script of a module and all that it imports. */
async function bundled(file: string): Promise<string> {
  const built = await build({
    configFile: false,
    logLevel: 'warn',
    build: {
      write: false,
      target: 'es2024',
      lib: { entry: path(file), formats: ['iife'], name: 'bundle', fileName: 'bundle' },
    },
  });
  const [output] = [built].flat();
  if (!output || !('output' in output)) throw new Error(`Nothing was built of ${file}`);
  return output.output[0].code;
}

type Refind = { refind: typeof refind };

async function callIn<N extends keyof typeof refind>(
  page: Page,
  method: N,
  ...args: Parameters<(typeof refind)[N]>
): Promise<Awaited<ReturnType<(typeof refind)[N]>>> {
  const call = { method: method as string, args: args as unknown[] };
  const result = await page.evaluate((its) => {
    const methods = (globalThis as unknown as Refind).refind as unknown as Record<
      string,
      (...all: unknown[]) => unknown
    >;
    return methods[its.method]!(...its.args);
  }, call);
  return result as Awaited<ReturnType<(typeof refind)[N]>>;
}

const all = ({ right, part, wrong, none }: Tally): number => right + part + wrong + none;
const percent = (tally: Tally, key: 'right' | 'wrong'): number => (100 * tally[key]) / all(tally);

/** The share of passages, beside the same of the library on the same pages. */
function share(
  name: string,
  ours: number,
  theirs: number,
  goal: [words: string, met: boolean] | null,
): Figure {
  return {
    name,
    value: Number(ours.toFixed(2)),
    unit: '%',
    against: `${LIBRARY} ${brief(theirs)} %`,
    ratio: theirs === 0 ? null : Number((ours / theirs).toPrecision(3)),
    goal: goal && goal[0],
    met: goal && goal[1],
  };
}

function sharesAt(level: Level, { ours, library }: { ours: Tally; library: Tally }): Figure[] {
  const name = `capture/find-${level.replaceAll(' ', '-')}`;
  const [right, wrong] = [percent(ours, 'right'), percent(ours, 'wrong')];
  const isHeld = HELD_TO.includes(level);
  return [
    share(
      `${name}-right`,
      right,
      percent(library, 'right'),
      isHeld ? [`at least ${LEAST_RIGHT} %`, right >= LEAST_RIGHT] : null,
    ),
    share(
      `${name}-wrong`,
      wrong,
      percent(library, 'wrong'),
      level === 'words' ? ['none', wrong === 0] : null,
    ),
  ];
}

/**
 * Passages of real pages after changes: how many are found where they are, to nine tenths at least, and how many
 * elsewhere; then the time for a hundred passages on a page of a megabyte, and the weight of the code.
 */
export async function figures(): Promise<Figure[]> {
  const script = await bundled('tests/unit/capture/find/refind/in-page.ts');
  const browser = await launchChromium({ extension: await builtExtension() });
  const fresh = async (): Promise<Page> => {
    const page = await browser.context.newPage();
    await page.setContent('<!doctype html><title>Passages</title>');
    await page.addScriptTag({ content: script });
    return page;
  };
  try {
    const results: Figure[] = [];
    const chapters = await Promise.all(CHAPTERS.map(readChapter));
    const page = await fresh();
    for (const level of levels)
      results.push(...sharesAt(level, await callIn(page, 'experiment', chapters, level)));
    await page.close();
    return [...results, ...(await speeds(fresh)), await weight()];
  } finally {
    await browser.close();
  }
}

/** Each time in a page of its own, whose code is as cold as in a page that the student has just opened. */
async function speeds(fresh: () => Promise<Page>): Promise<Figure[]> {
  const chapters = await Promise.all(MEGABYTE.map(readChapter));
  const taken = { changed: [] as number[], unchanged: [] as number[], longest: [] as number[] };
  for (let round = 0; round < REPEATS; round++) {
    for (const kind of ['changed', 'unchanged'] as const) {
      const page = await fresh();
      const { busy, longest, found } = await callIn(page, 'findMany', chapters, CLIPS, kind === 'changed');
      if (found < CLIPS * 0.97) throw new Error(`Only ${found} of ${CLIPS} passages were found`);
      taken[kind].push(busy);
      taken.longest.push(longest);
      await page.close();
    }
  }
  return [
    figure({
      name: 'capture/find-100-on-1mb-ms',
      value: median(taken.changed),
      unit: 'ms',
      against: { what: 'unchanged page', value: median(taken.unchanged) },
      goal: { atMost: 100 },
    }),
    figure({
      name: 'capture/find-100-on-1mb-longest-ms',
      value: Math.max(...taken.longest),
      unit: 'ms',
      goal: { atMost: 50 },
    }),
  ];
}

/** What a script in a page carries for it; kB = 1000 bytes. */
async function weight(): Promise<Figure> {
  const { length } = Buffer.from(await bundled('lib/capture/find/find-passages.ts'));
  return figure({ name: 'capture/find-script-kb', value: length / 1000, unit: 'kB', goal: { atMost: 20 } });
}
