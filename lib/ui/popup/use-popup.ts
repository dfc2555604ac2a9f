import { useCallback, useEffect, useLayoutEffect, useState } from 'preact/hooks';
import { StudentError } from '#lib/model/student-error.ts';
import { nextItems } from '#lib/recall/next-item.ts';
import type { Round } from '#lib/recall/round.ts';
import { readFirstUp, type FirstUp } from '#lib/store/first-up.ts';
import { useDeck } from '../deck/deck-context.tsx';
import { QUEUE_LENGTH, type BriefStanding, readBriefStanding } from '../derive/next-up.ts';
import { reasonOf } from '../derive/why.ts';
import { type RoundPlan, lastsFor } from '../round/round-plan.ts';
import { tell } from '../text.ts';
import { takeTrouble } from '../trouble.ts';
import { afterPaint } from './after-paint.ts';

/** A standing with the moment that it was worked out for, epoch ms. */
export interface Stood {
  standing: BriefStanding;
  at: number;
}

/** What the popup knows: at once what the cache holds, and a moment later the whole course. */
export interface PopupState {
  first: FirstUp | null;
  stood: Stood | null;
  trouble: string | null;
  fail(error: unknown): void;
  /** Reads the whole course in the background, which makes the cache anew. */
  refresh(): void;
  /** Reads the whole course now. */
  stand(courseId: string): Promise<Stood>;
  /** Reads anew what the popup opens on. */
  reopen(): Promise<FirstUp>;
}

export function usePopup(): PopupState {
  const db = useDeck();
  const [first, setFirst] = useState<FirstUp | null>(null);
  const [stood, setStood] = useState<Stood | null>(null);
  const [trouble, setTrouble] = useState<string | null>(null);
  const [turn, setTurn] = useState(0);
  const fail = useCallback((error: unknown) => setTrouble(tell(error)), []);

  const reopen = useCallback(async () => {
    const read = await readFirstUp(db);
    setFirst(read);
    return read;
  }, [db]);
  const stand = useCallback(
    async (courseId: string) => {
      const at = Date.now();
      const standing = await readBriefStanding(db, courseId, at);
      if (!standing) throw new StudentError('errorCourseGone');
      setStood({ standing, at });
      return { standing, at };
    },
    [db],
  );
  // Not after a frame, as effects are: the question is what the popup is opened for.
  useLayoutEffect(() => {
    void takeTrouble().then((text) => text !== null && setTrouble(text));
    reopen().catch(fail);
  }, [reopen, fail]);
  const courseId = first?.course?.id;
  useEffect(() => {
    if (courseId === undefined) return;
    // The deck may be large, and its reading must not hold up the question.
    return afterPaint(() => void stand(courseId).catch(fail));
  }, [stand, fail, courseId, turn]);
  const refresh = useCallback(() => setTurn((before) => before + 1), []);
  return { first, stood, trouble, fail, refresh, stand, reopen };
}

/** Whether reasons speak of an exam that has begun by now. */
const isPast = (first: FirstUp, now: number): boolean =>
  first.queue.some(({ reason }) => reason.isForExam && reason.aimAt <= now);

/**
 * The round over what gains most now: from the cache where it lasts, else from the whole course, with what the popup
 * shows first; null where neither is there yet.
 * @param now epoch ms
 * @param done rounds of this popup: where the cache is older than their end, it does not know what they asked
 */
export function defaultPlan(
  first: FirstUp,
  stood: Stood | null,
  done: readonly Round[],
  now: number,
): RoundPlan | null {
  const minutes = first.settings.roundMinutes;
  const courseId = first.course!.id;
  const asked = new Set(
    done
      .filter(({ lastAt }) => lastAt >= first.at)
      .flatMap(({ marked }) => marked.map(({ item }) => item.id)),
  );
  const cached = first.queue.filter(({ item }) => !asked.has(item.id));
  const plan = { courseId, minutes, order: 'gain' as const, turned: new Set<string>() };
  if (lastsFor(cached, minutes) && !isPast(first, now)) return { ...plan, queue: cached };
  if (!stood) return null;
  const queue = nextItems(stood.standing.ranked, QUEUE_LENGTH).map((one) => ({
    item: one.item,
    reason: reasonOf(one, stood.at),
  }));
  // What was shown is asked first, as long as it is there.
  const shown = cached[0] && queue.find(({ item }) => item.id === cached[0]!.item.id);
  return { ...plan, queue: shown ? [shown, ...queue.filter((one) => one !== shown)] : queue };
}
