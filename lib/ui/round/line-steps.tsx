import { useLayoutEffect, useRef } from 'preact/hooks';
import type { StepSize } from '#lib/recall/uncover-steps.ts';
import { Words } from '../parts/words.tsx';
import { t, tn } from '../text.ts';

interface LineStepsProps {
  /** The rest of the line, in the steps in which it is uncovered. */
  steps: readonly string[];
  /** How many of them are uncovered. */
  shown: number;
  size: StepSize;
  setSize(size: StepSize): void;
  step(): void;
  uncover(): void;
}

/** The covered rest of a line: a step at a time by Space or button, all of it by Enter. It takes the focus. */
export function LineSteps({ steps, shown, size, setSize, step, uncover }: LineStepsProps) {
  const box = useRef<HTMLDivElement>(null);
  useLayoutEffect(() => box.current!.focus(), []);
  const one = () => {
    step();
    // So that the next key goes on as before.
    box.current!.focus();
  };
  return (
    <div
      class="steps"
      role="group"
      aria-label={t('lineSteps')}
      tabIndex={-1}
      ref={box}
      onKeyDown={(event) => {
        if (event.target !== box.current || event.ctrlKey || event.altKey || event.metaKey) return;
        if (event.key !== ' ' && event.key !== 'Enter') return;
        event.preventDefault();
        if (event.repeat) return;
        if (event.key === ' ') step();
        else uncover();
      }}
    >
      <p class="steps-shown" aria-live="polite">
        <Words text={steps.slice(0, shown).join('')} />
        <span class="steps-left">{tn('stepsLeft', steps.length - shown)}</span>
      </p>
      <div class="row">
        <button type="button" onClick={one}>
          {size === 'word' ? t('stepWord') : t('stepClause')} <kbd>{t('keySpace')}</kbd>
        </button>
        <button
          type="button"
          class="plain"
          onClick={() => {
            setSize(size === 'word' ? 'clause' : 'word');
            box.current!.focus();
          }}
        >
          {size === 'word' ? t('stepByClause') : t('stepByWord')}
        </button>
      </div>
    </div>
  );
}
