import { type DeckBrowser, withDeckBrowser } from './deck-browser.ts';
import { type Figure, figure } from './figure.ts';
import { keyTimes } from './key-tasks.ts';
import { makeDeck } from './make-deck.ts';
import { makeNotes } from './make-notes.ts';
import { median } from './timing.ts';

const DECK = { topics: 20, questions: 8000, attempts: 0 };
const NOTES = { clips: 5000, lines: 7000 };
const REPEATS = 3;

/**
 * 20,000 things in Chromium, searched letter by letter as a student types: with the excerpts that are shown, against
 * MiniSearch and a scan of all text alone; and on the desk's page, with all that is drawn. And until the index is there,
 * and follows a change.
 */
export async function figures(): Promise<Figure[]> {
  const { measured, typed } = await withDeckBrowser(DECK, async (deck) => {
    await deck.run('fillNotes', NOTES);
    return { measured: await deck.run('search', NOTES, REPEATS), typed: await typeAtDesk(deck) };
  });
  const { keys, ready, longestBlock, follow, things } = measured;
  console.log(`  ${things} things, ${keys.ours.length} key strokes`);
  const late = (values: number[]) => values.toSorted((a, b) => a - b)[Math.ceil(0.99 * values.length) - 1]!;
  const worst = (values: number[]) => Math.max(...values).toFixed(1);
  console.log(
    `  worst key stroke: ours ${worst(keys.ours)}, MiniSearch ${worst(keys.mini)}, scan ${worst(keys.scan)} ms`,
  );
  const perKey = (name: string, of: (values: number[]) => number, what: string, other: number[]) =>
    figure({
      name: `notes/search-${name}`,
      value: of(keys.ours),
      unit: 'ms',
      against: { what, value: of(other) },
      goal: { atMost: 30 },
    });
  return [
    perKey('key-ms', median, 'MiniSearch alone', keys.mini),
    perKey('key-99th-ms', late, 'MiniSearch alone', keys.mini),
    perKey('key-99th-scan-ms', late, 'scan of all text', keys.scan),
    figure({ name: 'notes/search-typed-ms', value: median(typed), unit: 'ms', goal: { atMost: 30 } }),
    figure({ name: 'notes/search-typed-99th-ms', value: late(typed), unit: 'ms', goal: { atMost: 30 } }),
    figure({
      name: 'notes/search-ready-ms',
      value: ready.ours,
      unit: 'ms',
      against: { what: 'MiniSearch addAllAsync', value: ready.mini },
    }),
    figure({ name: 'notes/search-longest-block-ms', value: longestBlock, unit: 'ms' }),
    figure({
      name: 'notes/search-follow-ms',
      value: follow.ours,
      unit: 'ms',
      against: { what: 'the write alone', value: follow.bare },
    }),
  ];
}

const FIELD = '#search-field';
/** What the desk works out from the course on opening is done by then. */
const SETTLED_MS = 8000;

/** Types on the desk's search page; gives what each key took of its main thread, in ms of processor time. */
async function typeAtDesk({ browser }: DeckBrowser): Promise<number[]> {
  const { course, topics } = makeDeck({ topics: 1, questions: 0, attempts: 0 }, 0);
  const { asked } = makeNotes(NOTES, course.id, topics, 0);
  // By way of a page that shows the course, which has been read then.
  const page = await browser.openExtensionPage('desk.html#/course');
  await page.locator('h1', { hasText: 'Course' }).waitFor({ timeout: 60_000 });
  await page.locator('nav a[href="#/search"]').click();
  await page.locator(FIELD).fill('zzz');
  // Once it is known that nothing is found, everything is in the index.
  await page.getByText('Nothing found').last().waitFor({ timeout: 60_000 });
  const frame = () =>
    page.evaluate(() => new Promise((resolve) => requestAnimationFrame(() => setTimeout(resolve))));
  await page.waitForTimeout(SETTLED_MS);
  const times = await keyTimes(page, async () => {
    for (const text of asked) {
      await page.locator(FIELD).fill('');
      await frame();
      for (const letter of text) {
        await page.keyboard.type(letter);
        await frame();
      }
    }
  });
  await page.close();
  return times;
}
