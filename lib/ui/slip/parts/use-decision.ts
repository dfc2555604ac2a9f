import { useLayoutEffect, useRef, useState } from 'preact/hooks';
import type { SlipState } from '#lib/model/message.ts';
import { type Decision, firstDecision, followPassage } from './decision.ts';

/** The student's decision, which follows the passage while that is widened. */
export function useDecision(state: SlipState) {
  const [decision, setDecision] = useState(() => firstDecision(state));
  const isChosen = useRef(false);
  useLayoutEffect(() => setDecision((before) => followPassage(before, state, isChosen.current)), [state]);
  const change = (part: Partial<Decision>) => {
    if (part.topicIds) isChosen.current = true;
    setDecision((before) => ({ ...before, ...part }));
  };
  return { decision, change };
}
