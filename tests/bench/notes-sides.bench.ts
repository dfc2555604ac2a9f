import { withDeckBrowser } from './deck-browser.ts';
import { type Figure, figure } from './figure.ts';
import { median } from './timing.ts';

const LINES = 400;
const LETTERS = 300;
const LONGEST_LINE = 20_000;

const slowest = (times: readonly number[]): number =>
  times.toSorted((a, b) => a - b)[Math.floor(times.length * 0.99)]!;

/** Counting the printed sides of a course of 400 lines after each letter, against a bare layout of the same words. */
export async function figures(): Promise<Figure[]> {
  return withDeckBrowser({ topics: 1, questions: 1, attempts: 0 }, async (deck) => {
    const usual = await deck.run('countSides', LINES, LETTERS, null);
    const longest = await deck.run('countSides', LINES, 60, LONGEST_LINE);
    const what = 'the same words in a bare element';
    return [
      figure({
        name: 'notes/sides-letter-ms',
        value: median(usual.changes),
        unit: 'ms',
        against: { what, value: median(usual.bare) },
        goal: { atMost: 4 },
      }),
      figure({
        name: 'notes/sides-letter-slowest-of-100-ms',
        value: slowest(usual.changes),
        unit: 'ms',
        against: { what, value: slowest(usual.bare) },
        goal: { atMost: 16 },
      }),
      figure({
        name: 'notes/sides-letter-in-20000-ms',
        value: median(longest.changes),
        unit: 'ms',
        against: { what, value: median(longest.bare) },
      }),
      figure({ name: 'notes/sides-first-count-ms', value: usual.first, unit: 'ms' }),
    ];
  });
}
