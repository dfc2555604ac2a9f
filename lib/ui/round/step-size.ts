import { useState } from 'preact/hooks';
import type { StepSize } from '#lib/recall/uncover-steps.ts';

/** A habit of this browser, not a part of the deck: popup and desk share it. */
const KEY = 'stepSize';

const read = (): StepSize => (localStorage.getItem(KEY) === 'clause' ? 'clause' : 'word');

/** How much of a line is uncovered at a time, as the student chose last. */
export function useStepSize(): [StepSize, (size: StepSize) => void] {
  const [size, setSize] = useState(read);
  const change = (to: StepSize) => {
    localStorage.setItem(KEY, to);
    setSize(to);
  };
  return [size, change];
}
