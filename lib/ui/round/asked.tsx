import { useMemo, useState } from 'preact/hooks';
import type { Item } from '#lib/model/item.ts';
import { uncoverSteps } from '#lib/recall/uncover-steps.ts';
import { Words } from '../parts/words.tsx';
import { t } from '../text.ts';
import { AnswerForm } from './answer-form.tsx';
import { LineSteps } from './line-steps.tsx';
import { MarksButtons } from './marks-buttons.tsx';
import { useStepSize } from './step-size.ts';
import type { RunningRound } from './use-round.ts';
import { type Answered, useSuggestion } from './use-suggestion.ts';

/** One item: what it asks, then the answer in mind, typed or uncovered in steps, then its marks. */
export function Asked({ item, running }: { item: Item; running: RunningRound }) {
  const [typed, setTyped] = useState('');
  const [size, setSize] = useStepSize();
  /** How much of the rest was uncovered as a help, in characters: it stays when the size of steps changes. */
  const [helped, setHelped] = useState(0);
  const steps = useMemo(() => uncoverSteps(item.covers, size), [item.covers, size]);
  const shown = stepsWithin(steps, helped);
  const isLine = item.kind === 'line';
  const step = () => {
    setHelped(steps.slice(0, shown + 1).join('').length);
    // The last step leaves nothing to be recalled.
    if (shown + 1 >= steps.length) running.uncover();
  };
  const covered = running.round.uncoveredAt === null;
  if (!covered)
    return (
      <Uncovered
        item={item}
        answered={{ typed, help: isLine ? { uncovered: shown, of: steps.length } : null }}
        give={(marks) => running.give(marks, typed)}
      />
    );
  const { uncover } = running;
  return (
    <>
      {isLine && (
        <LineSteps steps={steps} shown={shown} size={size} setSize={setSize} step={step} uncover={uncover} />
      )}
      <AnswerForm typed={typed} setTyped={setTyped} takesFocus={!isLine} uncover={uncover} />
    </>
  );
}

/** The steps that lie within the first characters, at least in part. */
function stepsWithin(steps: readonly string[], characters: number): number {
  let [count, length] = [0, 0];
  while (count < steps.length && length < characters) length += steps[count++]!.length;
  return count;
}

interface UncoveredProps {
  item: Item;
  answered: Answered;
  give(marks: number): void;
}

function Uncovered({ item, answered, give }: UncoveredProps) {
  const suggested = useSuggestion(item, answered);
  return (
    <>
      <div class="answers">
        {answered.typed.trim() !== '' && (
          <div class="answer typed">
            <h2 class="soft">{t('roundYours')}</h2>
            <p>
              <Words text={answered.typed} />
            </p>
          </div>
        )}
        <div class="answer">
          <h2 class="soft">{t('roundAnswer')}</h2>
          <p>
            <Words text={item.covers} />
          </p>
        </div>
      </div>
      <MarksButtons outOf={item.marks} suggested={suggested} give={give} />
    </>
  );
}
