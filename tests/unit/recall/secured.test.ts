import fc from 'fast-check';
import { describe, expect, it, test } from 'vitest';
import { memoryOf, type Recalled } from '#lib/recall/memory.ts';
import { daysLacking, isSecured, lackOf, recallsOf } from '#lib/recall/secured.ts';
import { studyClock } from '#lib/recall/study-time.ts';
import { anyAttempts, DAY, recalled, START } from './builders.ts';

const utcDay = (at: number): string => new Date(at).toISOString().slice(0, 10);
const aucklandDay = (at: number): string =>
  new Intl.DateTimeFormat('en-CA', { timeZone: 'Pacific/Auckland' }).format(at);
const onDays = (...days: number[]) => days.map((day, n) => recalled(n, START + day * DAY));
const holds = (attempts: Recalled[], chance: number, threshold?: number) =>
  isSecured({ kind: 'question' }, recallsOf(attempts), chance, utcDay, threshold);

describe('an item', () => {
  it('is secured by full marks on three days and a chance that holds', () => {
    expect(holds(onDays(0, 3, 10), 0.9)).toBe(true);
  });

  it('is not with a chance below the threshold', () => {
    expect(holds(onDays(0, 3, 10), 0.899)).toBe(false);
    expect(holds(onDays(0, 3, 10), 0.8, 0.8)).toBe(true);
  });

  it('is not by three full marks on two days', () => {
    expect(holds(onDays(0, 0.01, 3), 1)).toBe(false);
  });

  it.each([0, 0.5])('loses it by %s marks at the latest attempt, whatever the order given', (marks) => {
    const lost = [recalled(9, START + 11 * DAY, { marks }), ...onDays(0, 3, 10)];
    expect(holds(lost, 1)).toBe(false);
    expect(holds([...lost, recalled(10, START + 12 * DAY)], 1)).toBe(true);
  });

  it('is not secured where one of two attempts at the latest moment was missed', () => {
    const tied = [...onDays(0, 3, 10), recalled(9, START + 10 * DAY, { marks: 0 })];
    expect(holds(tied, 1)).toBe(false);
    expect(holds(tied.toReversed(), 1)).toBe(false);
  });

  it('is not secured without attempts', () => {
    expect(holds([], 1)).toBe(false);
  });
});

describe('a line', () => {
  type Order = Recalled['order'];
  const line = { kind: 'line' as const };
  const inOrders = (...orders: Order[]) =>
    recallsOf(orders.map((order, n) => recalled(n, START + n * DAY, { order })));

  it.each<[string, Order[], boolean]>([
    ['as the notes stand only', ['forward', 'forward', 'forward'], false],
    ['back to front only', ['backToFront', 'backToFront', 'backToFront'], false],
    ['in both directions', ['forward', 'backToFront', 'forward'], true],
    ['as the notes stand, then out of order', ['forward', 'forward', 'outOfOrder'], true],
    ['by what gains most', ['gain', 'gain', 'gain'], true],
    ['before orders were recorded', [null, null, null], false],
    ['before orders were recorded, then back to front', [null, null, 'backToFront'], true],
  ])('recalled %s', (_, orders, secured) => {
    expect(isSecured(line, inOrders(...orders), 1, utcDay)).toBe(secured);
    expect(isSecured({ kind: 'question' }, inOrders(...orders), 1, utcDay)).toBe(true);
  });

  it('says which direction it lacks', () => {
    const none = { days: 0, latest: false, forward: false, backToFront: false, chance: false };
    const lack = (...orders: Order[]) => lackOf(line, inOrders(...orders), 1, utcDay);
    expect(lack('forward', null, 'forward')).toEqual({ ...none, backToFront: true });
    expect(lack('backToFront', 'backToFront')).toEqual({ ...none, days: 1, forward: true });
    expect(lack()).toEqual({ ...none, days: 3, forward: true, backToFront: true });
  });

  it('does not count a direction in which marks were missed', () => {
    const [first, second, third] = onDays(0, 3, 10).map((one) => ({ ...one, order: 'forward' as const }));
    const missed = recalled(8, START + 5 * DAY, { order: 'backToFront', marks: 0.5 });
    const lack = lackOf(line, recallsOf([first!, second!, missed, third!]), 1, utcDay);
    expect(lack.backToFront).toBe(true);
  });
});

test('lacks the same by its memory as by its attempts', () => {
  fc.assert(
    fc.property(anyAttempts, fc.constantFrom('line', 'question'), fc.nat(1), (attempts, kind, chance) => {
      const clock = studyClock(attempts.map(({ at }) => at));
      const memory = memoryOf({ createdAt: START - DAY }, attempts, clock);
      const lack = lackOf({ kind }, memory, chance, utcDay);
      expect(lack).toEqual(lackOf({ kind }, recallsOf(attempts), chance, utcDay));
      const lacksNothing = lack.days === 0 && !Object.values(lack).includes(true);
      expect(isSecured({ kind }, memory, chance, utcDay)).toBe(lacksNothing);
    }),
  );
});

it("counts days in the student's zone", () => {
  const recalls = recallsOf([10, 13].map((hour, n) => recalled(n, Date.UTC(2026, 5, 1, hour))));
  expect(daysLacking(recalls, utcDay)).toBe(2);
  expect(daysLacking(recalls, aucklandDay)).toBe(1);
});
