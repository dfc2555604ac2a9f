import { useCallback, useEffect, useRef, useState } from 'preact/hooks';
import type { Item } from '#lib/model/item.ts';
import { type Round, marked, secondsLeft, startRound, stopped, uncovered } from '#lib/recall/round.ts';
import { recordAttempt } from '#lib/store/actions/attempts.ts';
import { useDeck } from '../deck/deck-context.tsx';
import { tell } from '../text.ts';

export interface RunningRound {
  round: Round;
  /** Whole seconds left. */
  left: number;
  trouble: string | null;
  uncover(): void;
  /** Marks the item in hand. The attempt is on disk before the next item is shown. */
  give(marks: number, typed: string): void;
  stop(): void;
}

/** A round that runs: its state, its clock, and its attempts on their way into the deck. */
export function useRound(courseId: string, queue: readonly Item[], minutes: number): RunningRound {
  const db = useDeck();
  const [round, setRound] = useState(() =>
    startRound({ id: crypto.randomUUID(), courseId, at: Date.now(), minutes, queue }),
  );
  const [now, setNow] = useState(() => Date.now());
  const [trouble, setTrouble] = useState<string | null>(null);
  const saving = useRef(false);
  const running = round.ended === null;
  useEffect(() => {
    if (!running) return;
    const ticking = setInterval(() => setNow(Date.now()), 250);
    return () => clearInterval(ticking);
  }, [running]);

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
  return { round, left, trouble, uncover, give: (marks, typed) => void give(marks, typed), stop };
}
