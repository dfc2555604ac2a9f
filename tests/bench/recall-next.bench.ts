import { itemOfQuestion } from '#lib/model/item.ts';
import { ItemQueue } from '#lib/recall/item-queue.ts';
import { memoryOf, withAttempt } from '#lib/recall/memory.ts';
import { nextItems, rankerOf, rankItems } from '#lib/recall/next-item.ts';
import { packMemories, unpackMemories } from '#lib/recall/packed-memory.ts';
import { finish } from '#lib/recall/steps.ts';
import { studyClock } from '#lib/recall/study-time.ts';
import { type Figure, figure } from './figure.ts';
import { type DeckSize, makeDeck } from './make-deck.ts';
import { inTurns, tookOnce } from './timing.ts';

const DAY_MS = 86_400_000;
const NOW = Date.UTC(2026, 5, 1, 18);
const SIZE: DeckSize = { topics: 20, questions: 20_000, attempts: 200_000 };

/**
 * 20,000 questions with 200,000 attempts, in Node. The next item after an attempt: its memory, its gain and its place
 * in the queue anew, and the next one taken, against ranking all of them anew. Memories from their packed form, against
 * working them out from the attempts.
 */
export async function figures(): Promise<Figure[]> {
  const deck = makeDeck(SIZE, NOW);
  const shares = new Map(deck.topics.map(({ id }) => [id, 1 / deck.topics.length]));
  const workedOut = () => {
    const clock = studyClock(deck.attempts.map(({ at }) => at));
    const byItem = Map.groupBy(deck.attempts, ({ itemId }) => itemId);
    const memories = new Map(deck.questions.map((q) => [q.id, memoryOf(q, byItem.get(q.id) ?? [], clock)]));
    return { memories, clock };
  };
  const { memories, clock } = workedOut();
  const candidates = deck.questions.map((q) => ({ item: itemOfQuestion(q), memory: memories.get(q.id)! }));
  const input = { candidates, shares, clock, now: NOW, examAt: NOW + 45 * DAY_MS };

  const queue = new ItemQueue(rankItems(input));
  const rank = rankerOf(input);
  let now = NOW;
  const next = () => {
    const asked = queue.next()!;
    now += 12_000;
    const attempt = {
      id: asked.item.id,
      at: now,
      marks: 0,
      outOf: asked.item.marks,
      seconds: 12,
      order: 'gain' as const,
    };
    const memory = withAttempt(memories.get(asked.item.id)!, attempt, clock)!;
    clock.add(now);
    memories.set(asked.item.id, memory);
    queue.putBack(rank({ item: asked.item, memory }, now));
  };
  const afterAttempt = await inTurns(
    { repeats: 9, warmUp: 2 },
    () => tookOnce(next, 20),
    () => tookOnce(() => nextItems(rankItems(input), 1)),
  );
  const packed = finish(packMemories({ memories, gone: new Set(), clock }));
  const unpacking = await inTurns(
    { repeats: 7, warmUp: 2 },
    () => tookOnce(() => finish(unpackMemories(packed))),
    () => tookOnce(workedOut),
  );
  return [
    figure({
      name: 'recall/next-item-ms',
      value: afterAttempt.ours,
      unit: 'ms',
      against: { what: 'ranking all 20,000 anew', value: afterAttempt.other },
      goal: { atMost: 5 },
    }),
    figure({
      name: 'recall/unpack-20000-ms',
      value: unpacking.ours,
      unit: 'ms',
      against: { what: 'from the 200,000 attempts', value: unpacking.other },
    }),
  ];
}
