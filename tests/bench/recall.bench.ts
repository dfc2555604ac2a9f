import { withDeckBrowser } from './deck-browser.ts';
import { type Figure, figure } from './figure.ts';

const TURNS = { repeats: 7, warmUp: 1 };

/**
 * What follows from 50,000 attempts at 5,000 questions, worked out in Chromium. The attempts have to be read first
 * in any case, so a bare read of them is what the work is held against.
 */
export async function figures(): Promise<Figure[]> {
  const size = { topics: 20, questions: 5000, attempts: 50_000 };
  const { memories, rank } = await withDeckBrowser(size, (deck) => deck.run('recall', TURNS));
  const against = (value: number) => ({ what: 'bare read of the attempts', value });
  return [
    figure({
      name: 'recall/memories-from-attempts-ms',
      value: memories.ours,
      unit: 'ms',
      against: against(memories.other),
    }),
    figure({ name: 'recall/rank-5000-ms', value: rank.ours, unit: 'ms', against: against(rank.other) }),
  ];
}
