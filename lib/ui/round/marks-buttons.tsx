import { useLayoutEffect, useRef } from 'preact/hooks';
import { type Choice, choicesOf } from '#lib/recall/marks.ts';
import { Mark } from '../parts/mark.tsx';
import { t } from '../text.ts';

/** The key that gives a choice: the first letter of its word for one mark, the number of marks for several. */
export function keyOf(choice: Choice, outOf: number): string {
  if (outOf > 1) return String(choice.marks);
  return { full: t('keyFull'), part: t('keyPart'), none: t('keyNone') }[choice.judgement];
}

function labelOf(choice: Choice, outOf: number): string {
  const word = { full: t('marksFull'), part: t('marksPart'), none: t('marksNone') }[choice.judgement];
  return outOf > 1 ? t('marksOf', word, choice.marks, outOf) : word;
}

/** The ways to mark an answer, by click or key. It takes the focus, without choosing for the student. */
export function MarksButtons({ outOf, give }: { outOf: number; give(marks: number): void }) {
  const box = useRef<HTMLFieldSetElement>(null);
  useLayoutEffect(() => box.current!.focus(), []);
  const choices = choicesOf(outOf);
  return (
    <fieldset
      class="marks"
      ref={box}
      tabIndex={-1}
      onKeyDown={(event) => {
        if (event.ctrlKey || event.altKey || event.metaKey || event.repeat) return;
        const choice = choices.find((one) => keyOf(one, outOf).toLowerCase() === event.key.toLowerCase());
        if (!choice) return;
        event.preventDefault();
        give(choice.marks);
      }}
    >
      <legend>{t('marksAsk')}</legend>
      <div class="row">
        {choices.map((choice) => (
          <button type="button" key={choice.marks} onClick={() => give(choice.marks)}>
            <Mark judgement={choice.judgement} /> {labelOf(choice, outOf)}{' '}
            {keyOf(choice, outOf) !== String(choice.marks) && <kbd>{keyOf(choice, outOf)}</kbd>}
          </button>
        ))}
      </div>
    </fieldset>
  );
}
