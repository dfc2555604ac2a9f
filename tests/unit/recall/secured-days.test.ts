import fc from 'fast-check';
import { describe, expect, it, test } from 'vitest';
import { chanceAt, memoryOf } from '#lib/recall/memory.ts';
import { securedTurns } from '#lib/recall/secured-days.ts';
import { isSecured, recallsOf } from '#lib/recall/secured.ts';
import { studyClock } from '#lib/recall/study-time.ts';
import { DAY, START, anyAttempts, recalled } from './builders.ts';

const dayOf = (at: number): string => new Date(at).toISOString().slice(0, 10);
const aimOn = (): number => START + 60 * DAY;
const item = { kind: 'question' as const, createdAt: START - DAY };
const turnsOf = (attempts: ReturnType<typeof recalled>[]) =>
  securedTurns(item, attempts, { clock: studyClock(attempts.map(({ at }) => at)), dayOf, aimOn });

describe('the days on which an item turned', () => {
  const spaced = [0, 4, 9, 16, 30, 44].map((day, n) => recalled(n, START + day * DAY));

  it('are none for one that was never full on three days', () => {
    expect(turnsOf([recalled(0, START), recalled(1, START + DAY)])).toEqual([]);
  });

  it('hold the day it came to be secured, and the day it was missed', () => {
    const first = turnsOf(spaced);
    expect(first).toHaveLength(1);
    expect(first[0]!.isSecured).toBe(true);
    const missed = turnsOf([...spaced, recalled(8, START + 50 * DAY, { marks: 0 })]);
    expect(missed).toEqual([...first, { day: dayOf(START + 50 * DAY), isSecured: false }]);
  });

  it('wait, for a line, for full marks in the other direction', () => {
    const line = { ...item, kind: 'line' as const };
    const forward = spaced.map((one) => ({ ...one, order: 'forward' as const }));
    const back = recalled(9, START + 50 * DAY, { order: 'backToFront' });
    const clock = studyClock([...forward, back].map(({ at }) => at));
    const how = { clock, dayOf, aimOn };
    expect(securedTurns(line, forward, how)).toEqual([]);
    expect(securedTurns(line, [back, ...forward], how)).toEqual([{ day: dayOf(back.at), isSecured: true }]);
  });

  test('end as the item stands today, and alternate', () => {
    fc.assert(
      fc.property(anyAttempts, (attempts) => {
        const clock = studyClock(attempts.map(({ at }) => at));
        const turns = securedTurns(item, attempts, { clock, dayOf, aimOn });
        const chance = chanceAt(memoryOf(item, attempts, clock), clock, aimOn());
        const holds = isSecured(item, recallsOf(attempts), chance, dayOf);
        expect(turns.at(-1)?.isSecured ?? false).toBe(holds);
        turns.forEach(({ isSecured: now }, index) => expect(now).toBe(index % 2 === 0));
      }),
    );
  });
});
