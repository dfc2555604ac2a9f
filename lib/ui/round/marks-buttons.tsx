import { useLayoutEffect, useRef } from 'preact/hooks';
import { type Choice, choicesOf } from '#lib/recall/marks.ts';
import { Mark } from '../parts/mark.tsx';
import { t } from '../text.ts';
import type { SuggestedMarks } from './use-suggestion.ts';

/** The key that gives a choice: the first letter of its word for one mark, the number of marks for several. */
export function keyOf(choice: Choice, outOf: number): string {
  if (outOf > 1) return String(choice.marks);
  return { full: t('keyFull'), part: t('keyPart'), none: t('keyNone') }[choice.judgement];
}

/** A way to mark in words: "Full", or "Part: 2 of 3". */
export function labelOf(choice: Choice, outOf: number): string {
  const word = { full: t('marksFull'), part: t('marksPart'), none: t('marksNone') }[choice.judgement];
  return outOf > 1 ? t('marksOf', word, choice.marks, outOf) : word;
}

interface MarksButtonsProps {
  outOf: number;
  suggested: SuggestedMarks | null;
  give(marks: number): void;
}

/**
 * The ways to mark an answer, by click or key. It takes the focus: on the marks that are suggested, so that Enter
 * gives them, else on none.
 */
export function MarksButtons({ outOf, suggested, give }: MarksButtonsProps) {
  const box = useRef<HTMLFieldSetElement>(null);
  const marks = suggested?.marks ?? null;
  useLayoutEffect(() => {
    // Who has gone on to another button meanwhile stays there.
    const isFree = !box.current!.contains(document.activeElement) || document.activeElement === box.current;
    if (!isFree) return;
    (box.current!.querySelector<HTMLElement>('.suggested') ?? box.current!).focus();
  }, [marks]);
  const choices = choicesOf(outOf);
  return (
    <fieldset
      class="marks"
      ref={box}
      tabIndex={-1}
      onKeyDown={(event) => {
        // The key that uncovered, still held down, must not press the marks that are suggested.
        if (event.repeat && (event.key === 'Enter' || event.key === ' ')) event.preventDefault();
        if (event.ctrlKey || event.altKey || event.metaKey || event.repeat) return;
        const choice = choices.find((one) => keyOf(one, outOf).toLowerCase() === event.key.toLowerCase());
        if (!choice) return;
        event.preventDefault();
        give(choice.marks);
      }}
    >
      <legend>{t('marksAsk')}</legend>
      <p class="soft" role="status">
        {suggested?.words}
      </p>
      <div class="row">
        {choices.map((choice) => (
          <button
            type="button"
            key={choice.marks}
            class={choice.marks === marks ? 'suggested' : undefined}
            onClick={() => give(choice.marks)}
          >
            <Mark judgement={choice.judgement} /> {labelOf(choice, outOf)}{' '}
            {keyOf(choice, outOf) !== String(choice.marks) && <kbd>{keyOf(choice, outOf)}</kbd>}
          </button>
        ))}
      </div>
    </fieldset>
  );
}
