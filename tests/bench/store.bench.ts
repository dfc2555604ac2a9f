import { type DeckBrowser, withDeckBrowser } from './deck-browser.ts';
import { type Figure, figure } from './figure.ts';

const TURNS = { repeats: 7, warmUp: 1 };

/** Reading a course whole, in Chromium, against a bare getAll of the same stores. */
export async function figures(): Promise<Figure[]> {
  const read = (name: string) => async (deck: DeckBrowser) => {
    const { ours, other } = await deck.run('readCourse', TURNS);
    const against = { what: 'bare read of the same rows', value: other };
    return figure({ name, value: ours, unit: 'ms', against });
  };
  return [
    await withDeckBrowser({ topics: 20, questions: 5000, attempts: 0 }, read('store/read-course-ms')),
    await withDeckBrowser(
      { topics: 20, questions: 5000, attempts: 50_000 },
      read('store/read-course-with-attempts-ms'),
    ),
  ];
}
