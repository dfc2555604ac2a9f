import { withDeckBrowser } from './deck-browser.ts';
import { type Figure, figure } from './figure.ts';
import { median } from './timing.ts';

const DECK = { topics: 20, questions: 8000, attempts: 0 };
const NOTES = { clips: 5000, lines: 7000 };
const REPEATS = 3;

/**
 * 20,000 things in Chromium, searched letter by letter as a student types: with the excerpts that are shown, against
 * MiniSearch and a scan of all text alone. And until the index is there, and follows a change.
 */
export async function figures(): Promise<Figure[]> {
  const { keys, ready, longestBlock, follow, things } = await withDeckBrowser(DECK, async (deck) => {
    await deck.run('fillNotes', NOTES);
    return deck.run('search', NOTES, REPEATS);
  });
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
