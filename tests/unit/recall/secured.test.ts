import { describe, expect, it } from 'vitest';
import { fullDays, isSecured } from '#lib/recall/secured.ts';
import { DAY, recalled, START } from './builders.ts';

const utcDay = (at: number): string => new Date(at).toISOString().slice(0, 10);
const aucklandDay = (at: number): string =>
  new Intl.DateTimeFormat('en-CA', { timeZone: 'Pacific/Auckland' }).format(at);
const onDays = (...days: number[]) => days.map((day, n) => recalled(n, START + day * DAY));

describe('an item', () => {
  it('is secured by full marks on three days and a chance that holds', () => {
    expect(isSecured(onDays(0, 3, 10), 0.9, utcDay)).toBe(true);
  });

  it('is not with a chance below the threshold', () => {
    expect(isSecured(onDays(0, 3, 10), 0.899, utcDay)).toBe(false);
    expect(isSecured(onDays(0, 3, 10), 0.8, utcDay, 0.8)).toBe(true);
  });

  it('is not by three full marks on two days', () => {
    expect(isSecured(onDays(0, 0.01, 3), 1, utcDay)).toBe(false);
  });

  it.each([0, 0.5])('loses it by %s marks at the latest attempt, whatever the order given', (marks) => {
    const lost = [recalled(9, START + 11 * DAY, { marks }), ...onDays(0, 3, 10)];
    expect(isSecured(lost, 1, utcDay)).toBe(false);
    expect(isSecured([...lost, recalled(10, START + 12 * DAY)], 1, utcDay)).toBe(true);
  });

  it('is not secured where one of two attempts at the latest moment was missed', () => {
    const tied = [...onDays(0, 3, 10), recalled(9, START + 10 * DAY, { marks: 0 })];
    expect(isSecured(tied, 1, utcDay)).toBe(false);
    expect(isSecured(tied.toReversed(), 1, utcDay)).toBe(false);
  });

  it('is not secured without attempts', () => {
    expect(isSecured([], 1, utcDay)).toBe(false);
  });
});

it("counts days in the student's zone", () => {
  const attempts = [10, 13].map((hour, n) => recalled(n, Date.UTC(2026, 5, 1, hour)));
  expect(fullDays(attempts, utcDay)).toBe(1);
  expect(fullDays(attempts, aucklandDay)).toBe(2);
});
