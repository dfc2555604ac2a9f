import { useCallback, useEffect, useLayoutEffect, useRef, useState } from 'preact/hooks';
import type { Item } from '#lib/model/item.ts';
import { turned } from '#lib/recall/directions.ts';
import {
  type Round,
  marked,
  renewed,
  secondsLeft,
  startRound,
  stopped,
  uncovered,
} from '#lib/recall/round.ts';
import { recordAttempt } from '#lib/store/actions/attempts.ts';
import { onChange } from '#lib/store/changes.ts';
import { readItems } from '#lib/store/items-now.ts';
import { useDeck } from '../deck/deck-context.tsx';
import { tell } from '../text.ts';
import type { RoundPlan } from './round-plan.ts';

/** What happened to an item in mid-round: changed while it was in hand, or deleted. */
export type Notice = 'changed' | 'gone';

export interface RunningRound {
  round: Round;
  /** Whole seconds left. */
  left: number;
  trouble: string | null;
  notice: Notice | null;
  uncover(): void;
  /** Marks the item in hand. The attempt is on disk before the next item is shown. */
  give(marks: number, typed: string): void;
  stop(): void;
}

/** A round that runs: its state, its clock, its attempts on their way into the deck, its items as they are by now. */
export function useRound(plan: RoundPlan): RunningRound {
  const db = useDeck();
  const [round, setRound] = useState(() => begin(plan));
  const [now, setNow] = useState(() => Date.now());
  const [trouble, setTrouble] = useState<string | null>(null);
  const saving = useRef(false);
  const running = round.ended === null;
  useEffect(() => {
    if (!running) return;
    const ticking = setInterval(() => setNow(Date.now()), 250);
    return () => clearInterval(ticking);
  }, [running]);
  const { notice, clear } = useRenewal(round, setRound, plan.turned);

  const uncover = useCallback(() => setRound((before) => uncovered(before, Date.now())), []);
  const stop = useCallback(() => setRound((before) => stopped(before, Date.now())), []);
  const give = async (marks: number, typed: string) => {
    if (saving.current) return;
    const next = marked(round, { at: Date.now(), marks, typed });
    if (!next.attempt) return;
    saving.current = true;
    try {
      await recordAttempt(db, { id: crypto.randomUUID(), ...next.attempt });
      setTrouble(null);
      clear();
      // The student may have stopped while it was saved.
      setRound((now) => (now.ended === null ? next.round : stopped(next.round, Date.now())));
    } catch (error) {
      // The item stays in hand, so that its marks can be given again.
      setTrouble(tell(error));
    } finally {
      saving.current = false;
    }
  };
  const left = Math.ceil(secondsLeft(round, now));
  return { round, left, trouble, notice, uncover, give: (marks, typed) => void give(marks, typed), stop };
}

function begin({ courseId, minutes, order, queue, turned: sides }: RoundPlan): Round {
  const items = queue.map(({ item }) => (sides.has(item.id) ? turned(item) : item));
  const id = crypto.randomUUID();
  return startRound({ id, courseId, at: Date.now(), minutes, order, turned: sides, queue: items });
}

/** Keeps a round's items as the deck has them, when another page changes or deletes some. */
function useRenewal(
  round: Round,
  setRound: (change: (before: Round) => Round) => void,
  sides: ReadonlySet<string>,
) {
  const db = useDeck();
  const [notice, setNotice] = useState<Notice | null>(null);
  const latest = useRef(round);
  latest.current = round;
  // Before the first frame: what changes from then on must not be missed.
  useLayoutEffect(() => {
    const closing = new AbortController();
    const renew = async () => {
      const { current, queue } = latest.current;
      if (!current) return;
      const items = await readItems(db, [current, ...queue]);
      const byNow = (item: Item) => {
        const found = items.get(item.id);
        if (!found) return null;
        const shown = sides.has(item.id) ? turned(found) : found;
        return isSame(item, shown) ? item : shown;
      };
      // Marks may have been given meanwhile: what is in hand by now is told apart from what was.
      setRound((before) => renewed(before, byNow, Date.now()));
      const inHand = latest.current.current;
      if (inHand) setNotice((before) => noticeOf(inHand, byNow(inHand)) ?? before);
    };
    onChange(({ stores }) => {
      // What cannot be read again stays as it was asked.
      if (stores.includes('questions') || stores.includes('lines')) renew().catch(() => undefined);
    }, closing.signal);
    return () => closing.abort();
  }, [db, setRound, sides]);
  return { notice, clear: useCallback(() => setNotice(null), []) };
}

const noticeOf = (before: Item, now: Item | null): Notice | null =>
  now === null ? 'gone' : now === before ? null : 'changed';

const isSame = (one: Item, other: Item): boolean =>
  one.asks === other.asks &&
  one.covers === other.covers &&
  one.marks === other.marks &&
  one.topicId === other.topicId;
