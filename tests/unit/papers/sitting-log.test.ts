import fc from 'fast-check';
import { describe, expect, it, test } from 'vitest';
import type { SittingEvent } from '#lib/model/sitting.ts';
import { openSittings, paces, sittingLog } from '#lib/papers/sitting-log.ts';
import { aPart, aSitting, MORNING, newId } from '../builders.ts';

const MINUTE = 60_000;
const at = (minutes: number): number => MORNING + minutes * MINUTE;
const sitting = aSitting({ restBreaks: true });

type Simple = Exclude<SittingEvent['kind'], 'turnedTo'>;
const event = (kind: Simple, minutes: number, sittingId = sitting.id): SittingEvent => ({
  id: newId(),
  sittingId,
  at: at(minutes),
  kind,
});
const turned = (partId: string, minutes: number): SittingEvent => ({
  id: newId(),
  sittingId: sitting.id,
  at: at(minutes),
  kind: 'turnedTo',
  partId,
});
const abouts = (log: ReturnType<typeof sittingLog>) => log.remarks.map(({ about }) => about);

describe('a sitting', () => {
  it('is told by its events: rests, breaks in conditions, time at each part, the end', () => {
    const [one, two] = [newId(), newId()];
    const log = sittingLog(
      sitting,
      [
        turned(one, 0),
        event('restBegan', 10),
        event('restEnded', 15),
        turned(two, 20),
        event('left', 22),
        event('returned', 23),
        turned(one, 40),
        event('ended', 50),
      ],
      at(500),
    );
    expect(log).toMatchObject({
      endedAt: at(50),
      rests: [{ from: at(10), to: at(15) }],
      breaks: [{ from: at(22), to: at(23) }],
      overMillis: 0,
      remarks: [],
    });
    expect([...log.partMillis]).toEqual([
      [one, 25 * MINUTE],
      [two, 20 * MINUTE],
    ]);
  });

  it('runs until it is ended, and says how far over', () => {
    const log = sittingLog(sitting, [event('restBegan', 5)], at(40));
    expect(log).toMatchObject({ endedAt: null, rests: [{ from: at(5), to: null }], overMillis: 0 });
    expect(sittingLog(sitting, [], at(64)).overMillis).toBe(4 * MINUTE);
    expect(sittingLog(sitting, [event('ended', 62)], at(90)).overMillis).toBe(2 * MINUTE);
  });

  it('that is open in two windows has one end, the first, and says what came after', () => {
    const log = sittingLog(sitting, [event('ended', 58), event('ended', 55), event('left', 57)], at(60));
    expect(log.endedAt).toBe(at(55));
    expect(abouts(log)).toEqual(['endedTwice', 'afterEnd']);
    expect(log.breaks).toEqual([]);
  });

  it('does not stop its clock for a rest that was not arranged', () => {
    const plain = aSitting();
    const log = sittingLog(
      plain,
      [event('restBegan', 5, plain.id), event('restEnded', 10, plain.id)],
      at(20),
    );
    expect(log.rests).toEqual([]);
    expect(abouts(log)).toEqual(['restNotAllowed']);
  });

  it('makes the best of events without their like, and of those before the start', () => {
    const log = sittingLog(
      sitting,
      [
        event('restBegan', -5),
        event('restBegan', 2),
        event('restEnded', 4),
        event('restEnded', 6),
        event('returned', 9),
        event('left', 3, newId()),
      ],
      at(20),
    );
    expect(log.rests).toEqual([{ from: at(0), to: at(4) }]);
    expect(log.breaks).toEqual([]);
    expect(abouts(log)).toEqual(['beforeStart', 'restBeganTwice', 'restEndedAlone', 'returnedAlone']);
  });

  const kinds = ['restBegan', 'restEnded', 'left', 'returned', 'ended'] as const;
  const events = fc
    .array(fc.tuple(fc.constantFrom(...kinds), fc.integer({ min: -5, max: 90 })), { maxLength: 12 })
    .map((all) => all.map(([kind, minutes]) => event(kind, minutes)));
  test('is the same in whatever order its events come, and however often', () => {
    fc.assert(
      fc.property(events, (all) => {
        const log = sittingLog(sitting, all, at(100));
        expect(sittingLog(sitting, [...all, ...all].reverse(), at(100))).toEqual(log);
        for (const { from, to } of [...log.rests, ...log.breaks]) {
          expect(from).toBeGreaterThanOrEqual(sitting.startedAt);
          expect(to ?? Infinity).toBeGreaterThanOrEqual(from);
        }
      }),
    );
  });
});

test('a sitting that is still open is found before another is begun', () => {
  const { paperId } = sitting;
  const later = aSitting({ paperId, startedAt: at(90) });
  const other = aSitting();
  expect(openSittings(paperId, [later, other, sitting], [])).toEqual([sitting, later]);
  expect(openSittings(paperId, [later, other, sitting], [event('ended', 60)])).toEqual([later]);
});

test('time spent stands beside the time that the marks allow', () => {
  const parts = [aPart({ marks: 10 }), aPart({ marks: 30 })];
  const spent = new Map([[parts[0]!.id, 20 * MINUTE]]);
  // A paper of 60 minutes and 40 marks has a minute and a half for each.
  expect(paces(sitting, parts, spent).map(({ spent: is, due }) => [is / MINUTE, due / MINUTE])).toEqual([
    [20, 15],
    [0, 45],
  ]);
  expect(paces(sitting, [aPart({ marks: 0 })], spent)[0]!.due).toBe(0);
});
