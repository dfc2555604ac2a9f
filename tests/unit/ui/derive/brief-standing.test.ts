import 'fake-indexeddb/auto';
import fc from 'fast-check';
import { afterEach, beforeEach, describe, expect, test, vi } from 'vitest';
import type { Attempt } from '#lib/model/attempt.ts';
import { isPacked, type PackedMemories } from '#lib/recall/packed-memory.ts';
import { recordAttempt } from '#lib/store/actions/attempts.ts';
import { onChange } from '#lib/store/changes.ts';
import { KEPT_AFTER } from '#lib/store/course-memory.ts';
import type { Db } from '#lib/store/schema.ts';
import { deleteRow, putBack } from '#lib/store/set-aside.ts';
import { readBriefStanding, readStanding } from '#lib/ui/derive/next-up.ts';
import { aLine, anAttempt, aQuestion, MORNING } from '../../builders.ts';
import { freshDeck } from '../../store/fresh-deck.ts';
import { course, deep, shallow, tides, waves } from '../a-course.ts';

const DAY = 86_400_000;
const inCourse = { courseId: course.id };
const soon = { ...course, examDay: '2026-03-13' };
const questions = [0, 1, 2].map((n) =>
  aQuestion({ ...inCourse, topicId: [deep, shallow, tides][n]!.id, createdAt: MORNING + n * 60_000 }),
);
const line = aLine({ ...inCourse, topicId: tides.id });
const items = [...questions.map(({ id }) => id), line.id];
/** Days on which full marks secure an item for the exam. */
const DAYS = [0, 1, 2, 4, 6, 8];
const tried = (itemId: string, at: number, over: Partial<Attempt> = {}) =>
  anAttempt({ ...inCourse, itemId, at, itemKind: itemId === line.id ? 'line' : 'question', ...over });

async function deckWith(attempts: readonly Attempt[] = []): Promise<Db> {
  const db = await freshDeck();
  await db.put('courses', soon);
  for (const topic of [waves, deep, shallow, tides]) await db.put('topics', topic);
  for (const question of questions) await db.put('questions', question);
  await db.put('lines', line);
  for (const attempt of attempts) await db.put('attempts', attempt);
  return db;
}

const kept = async (db: Db) => (await db.get('memories', course.id))?.packed as PackedMemories | undefined;
const keptCount = (db: Db, count: number) =>
  vi.waitFor(async () => expect((await kept(db))?.moments).toHaveLength(count));

/** Reads the standing as the popup does, and holds it against the one from all attempts; gives how many items are secured. */
async function expectSame(db: Db, now: number): Promise<number> {
  const brief = (await readBriefStanding(db, course.id, now))!;
  const { deck, progress, ranked } = (await readStanding(db, course.id, now))!;
  const { attempts, ...briefDeck } = deck;
  expect(brief.deck).toEqual(briefDeck);
  expect(brief.ranked).toEqual(ranked);
  expect(brief.progress.items).toEqual(progress.items);
  expect(brief.progress.memories).toEqual(progress.memories);
  expect(brief.progress.secured).toEqual(progress.secured);
  expect(brief.progress.attempted).toEqual(progress.attempted);
  expect(brief.progress.clock.moments()).toEqual(progress.clock.moments());
  expect(attempts).toHaveLength(progress.counted.size);
  return progress.secured.size;
}

const step = fc.oneof(
  { weight: 4, arbitrary: fc.record({ do: fc.constant('try' as const), after: fc.nat(DAY) }) },
  { weight: 1, arbitrary: fc.constant({ do: 'try' as const, after: 0 }) },
  { weight: 1, arbitrary: fc.record({ do: fc.constant('clock' as const), after: fc.nat(2 * DAY) }) },
  {
    weight: 1,
    arbitrary: fc.record({ do: fc.constantFrom('delete', 'back', 'new', 'edit'), after: fc.nat(DAY) }),
  },
  { weight: 2, arbitrary: fc.record({ do: fc.constant('read' as const), after: fc.nat(DAY) }) },
);
const history = fc.array(
  fc.tuple(
    step,
    fc.nat(items.length - 1),
    fc.constantFrom(1, 1, 1, 0.5, 0),
    fc.constantFrom('gain', 'forward', 'backToFront', 'outOfOrder', null),
  ),
  { maxLength: 14 },
);

test('from what is kept and what came since it is the same as from all attempts, whatever happens between', async () => {
  let reads = 0;
  let secured = 0;
  const studied = items.flatMap((id) => DAYS.map((day, n) => tried(id, MORNING + day * DAY + n)));
  await fc.assert(
    fc.asyncProperty(history, async (steps) => {
      const db = await deckWith(studied);
      let now = MORNING + 9 * DAY;
      let deleted: number[] = [];
      for (const [{ do: what, after }, n, marks, order] of steps) {
        const id = items[n]!;
        // A clock that is set back is one step; time goes on in all others.
        now += what === 'clock' ? -after : after;
        if (what === 'try') await recordAttempt(db, tried(id, now, { marks, order }));
        if (what === 'new')
          await db.put('questions', aQuestion({ ...inCourse, topicId: deep.id, createdAt: now }));
        if (what === 'edit') await db.put('lines', { ...line, rest: `It was put right at ${now}.` });
        if (what === 'delete') {
          const key = await deleteRow(db, id === line.id ? 'lines' : 'questions', id, now);
          if (key !== undefined) deleted.push(key);
        }
        if (what === 'back') {
          for (const key of deleted) await putBack(db, key);
          deleted = [];
        }
        if (what === 'read') {
          secured += await expectSame(db, now);
          reads++;
        }
      }
      await expectSame(db, now);
      await expectSame(db, now);
      db.close();
    }),
    { numRuns: 60 },
  );
  expect(reads).toBeGreaterThan(20);
  expect(secured).toBeGreaterThan(20);
});

describe('what is kept', () => {
  const days = DAYS.map((day) => tried(questions[0]!.id, MORNING + day * DAY));
  const now = MORNING + 9 * DAY;

  test('is written where there was nothing, and nobody is told', async () => {
    const db = await deckWith(days);
    const told = vi.fn();
    const closing = new AbortController();
    onChange(told, closing.signal);
    await readBriefStanding(db, course.id, now);
    await keptCount(db, days.length);
    closing.abort();
    expect(isPacked(await kept(db))).toBe(true);
    expect(told).not.toHaveBeenCalled();
  });

  test('is what the next standing comes from: no attempt before it is read', async () => {
    const db = await deckWith(days);
    await readBriefStanding(db, course.id, now);
    await keptCount(db, days.length);
    // As many as before, but others: only one who reads them can tell.
    for (const attempt of days) await db.put('attempts', { ...attempt, marks: 0 });
    const { progress } = (await readBriefStanding(db, course.id, now))!;
    expect(progress.secured).toEqual(new Set([questions[0]!.id]));
    expect((await readStanding(db, course.id, now))!.progress.secured.size).toBe(0);
  });

  test('is thrown away when an attempt came since that is dated before, or at the same moment', async () => {
    for (const at of [MORNING + DAY / 2, MORNING + 8 * DAY]) {
      const db = await deckWith(days);
      await readBriefStanding(db, course.id, now);
      await keptCount(db, days.length);
      await recordAttempt(db, tried(questions[1]!.id, at, { marks: 0 }));
      await expectSame(db, now);
      await keptCount(db, days.length + 1);
    }
  });

  test.each<[string, (packed: PackedMemories) => unknown]>([
    ['of another version', (packed) => ({ ...packed, version: packed.version - 1 })],
    ['no arrays', () => 'packed'],
    ['too short', (packed) => ({ ...packed, full: packed.full.slice(1) })],
    ['of fewer attempts', (packed) => ({ ...packed, moments: packed.moments.slice(1) })],
  ])('is thrown away where it is %s', async (_, spoil) => {
    const db = await deckWith(days);
    await readBriefStanding(db, course.id, now);
    await keptCount(db, days.length);
    await db.put('memories', { courseId: course.id, packed: spoil((await kept(db))!) });
    await expectSame(db, now);
    await vi.waitFor(async () => expect((await kept(db))?.moments).toHaveLength(days.length));
    await vi.waitFor(async () => expect(isPacked(await kept(db))).toBe(true));
  });

  test('is not written after each attempt, but once many came', async () => {
    const db = await deckWith(days);
    await readBriefStanding(db, course.id, now);
    await keptCount(db, days.length);
    for (let n = 0; n < KEPT_AFTER; n++) await db.put('attempts', tried(items[n % 4]!, now + n * 1000));
    await expectSame(db, now + DAY);
    await expectSame(db, now + DAY);
    expect((await kept(db))!.moments).toHaveLength(days.length);
    await db.put('attempts', tried(line.id, now + DAY));
    await expectSame(db, now + DAY);
    await keptCount(db, days.length + 1 + KEPT_AFTER);
  });

  test('holds no attempt from the future, so that it lasts under a clock that was set back', async () => {
    const ahead = tried(questions[1]!.id, now + 300 * DAY);
    const db = await deckWith([...days, ahead]);
    await expectSame(db, now);
    await keptCount(db, days.length);
    const before = await kept(db);
    await recordAttempt(db, tried(questions[1]!.id, now + 60_000));
    await expectSame(db, now + 120_000);
    expect(await kept(db)).toEqual(before);
  });

  test('lasts beside the attempts of other courses', async () => {
    const db = await deckWith(days);
    await db.put('attempts', anAttempt({ at: MORNING }));
    await readBriefStanding(db, course.id, now);
    await keptCount(db, days.length);
    const before = (await kept(db))!;
    // A sign that is only there where it is not written anew.
    await db.put('memories', { courseId: course.id, packed: { ...before, sign: true } });
    await recordAttempt(db, anAttempt({ at: MORNING + DAY }));
    await recordAttempt(db, tried(line.id, now));
    await expectSame(db, now);
    expect(await kept(db)).toHaveProperty('sign');
    // As many attempts in all as there would be without the other course's: only a count by course can tell.
    await db.delete('attempts', days[2]!.id);
    await expectSame(db, now);
    await keptCount(db, days.length);
  });

  test('goes with an attempt that cannot be read any more, and comes anew with it', async () => {
    const db = await deckWith(days);
    await readBriefStanding(db, course.id, now);
    await keptCount(db, days.length);
    await db.put('attempts', { ...days[2]!, marks: -1 });
    // As the desk does.
    await readStanding(db, course.id, now);
    expect(await kept(db)).toBeUndefined();
    await db.put('attempts', anAttempt());
    await expectSame(db, now);
    await keptCount(db, days.length - 1);
  });

  test('knows an item that came back', async () => {
    const db = await deckWith(days);
    const key = await deleteRow(db, 'questions', questions[0]!.id, now);
    await readBriefStanding(db, course.id, now);
    await vi.waitFor(async () => expect((await kept(db))?.gone).toEqual([questions[0]!.id]));
    await putBack(db, key!);
    await expectSame(db, now);
    await vi.waitFor(async () => expect((await kept(db))?.gone).toEqual([]));
  });
});

describe('with pages of rows', () => {
  beforeEach(() => void vi.spyOn(performance, 'now').mockImplementation(() => (tick += 5)));
  afterEach(() => vi.restoreAllMocks());
  let tick = 0;

  test('all are read, though more attempts than a page share one moment, and work is paused all the time', async () => {
    const db = await deckWith();
    for (let n = 0; n < 1100; n++) {
      await db.put('questions', aQuestion({ ...inCourse, topicId: deep.id }));
      if (n % 300 === 0) await db.put('questions', aQuestion({ topicId: deep.id }));
    }
    for (let n = 0; n < 2300; n++)
      await db.put(
        'attempts',
        tried(items[n % 4]!, n < 600 ? MORNING + n : MORNING + Math.max(1000, n - 900)),
      );
    await expectSame(db, MORNING + DAY);
    expect((await readBriefStanding(db, course.id, MORNING + DAY))!.ranked).toHaveLength(1104);
  });
});
