import 'fake-indexeddb/auto';
import { expect, test, vi } from 'vitest';
import { marked, type Round, startRound, uncovered } from '#lib/recall/round.ts';
import { recordAttempt } from '#lib/store/actions/attempts.ts';
import { readBriefStanding, readStanding, standingAfter, type Standing } from '#lib/ui/derive/next-up.ts';
import { aQuestion, MORNING, newId } from '../../builders.ts';
import { freshDeck } from '../../store/fresh-deck.ts';
import { course, deep } from '../a-course.ts';

const SECOND = 1000;

test.each([
  ['in turns', 4 * SECOND],
  ['at the very same moments', 0],
  ['by a clock that is set back in one of them', -3600 * SECOND],
])(
  'two rounds over the same items in two windows, answered %s: each attempt is kept and counted once',
  async (_, apart) => {
    const db = await freshDeck();
    await db.put('courses', course);
    await db.put('topics', deep);
    for (let n = 0; n < 3; n++)
      await db.put(
        'questions',
        aQuestion({ courseId: course.id, topicId: deep.id, createdAt: MORNING - 7_200_000 }),
      );
    let desk: Standing = (await readStanding(db, course.id, MORNING))!;
    const queue = desk.ranked.map(({ item }) => item);
    const start = (at: number) => startRound({ id: newId(), courseId: course.id, at, minutes: 5, queue });
    const windows: Round[] = [start(MORNING), start(MORNING + apart)];
    for (let turn = 1; turn <= 3; turn++) {
      for (const [n, round] of windows.entries()) {
        const at = MORNING + turn * 10 * SECOND + n * apart;
        const { round: next, attempt } = marked(uncovered(round, at), { at, marks: n, typed: '' });
        windows[n] = next;
        const kept = { ...attempt!, id: newId() };
        await recordAttempt(db, kept);
        // The desk follows what either window does, and reads all again where it cannot.
        desk = standingAfter(desk, kept, at) ?? (await readStanding(db, course.id, at))!;
        // What the popup would open on knows of both.
        await readBriefStanding(db, course.id, at);
      }
    }
    const now = MORNING + 3600 * SECOND;
    const anew = (await readStanding(db, course.id, now))!;
    expect(anew.progress.counted.size).toBe(6);
    expect([...anew.progress.memories.values()].map(({ attempts }) => attempts)).toEqual([2, 2, 2]);
    expect(new Set(anew.deck.attempts.map(({ roundId }) => roundId)).size).toBe(2);
    expect(desk.progress.memories).toEqual(anew.progress.memories);
    await vi.waitFor(async () => expect(await db.count('memories')).toBe(1));
    expect((await readBriefStanding(db, course.id, now))!.progress.memories).toEqual(anew.progress.memories);
  },
);
