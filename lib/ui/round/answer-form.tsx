import { useLayoutEffect, useRef } from 'preact/hooks';
import { t } from '../text.ts';
import { loadComparison } from './use-suggestion.ts';

/** As many characters as an attempt keeps of what was typed. */
export const LONGEST_TYPED = 20_000;

interface AnswerFormProps {
  typed: string;
  setTyped(text: string): void;
  /** Whether the field takes the focus: where nothing else does. */
  takesFocus: boolean;
  uncover(): void;
}

/** Where an answer can be typed, and the button that uncovers what is kept. */
export function AnswerForm({ typed, setTyped, takesFocus, uncover }: AnswerFormProps) {
  const field = useRef<HTMLTextAreaElement>(null);
  useLayoutEffect(() => {
    if (takesFocus) field.current!.focus();
  }, [takesFocus]);
  return (
    <form
      class="stack"
      onSubmit={(event) => {
        event.preventDefault();
        uncover();
      }}
    >
      <div class="field">
        <label for="typed" class="soft">
          {t('roundTyped')}
        </label>
        <textarea
          id="typed"
          ref={field}
          rows={2}
          maxLength={LONGEST_TYPED}
          value={typed}
          onInput={(event) => {
            loadComparison();
            setTyped(event.currentTarget.value);
          }}
          onKeyDown={(event) => {
            if (event.key !== 'Enter' || event.shiftKey || event.isComposing) return;
            event.preventDefault();
            if (!event.repeat) uncover();
          }}
        />
        {typed.length >= LONGEST_TYPED && (
          <p class="soft" role="status">
            {t('roundTypedFull', LONGEST_TYPED.toLocaleString())}
          </p>
        )}
      </div>
      <div>
        <button class="main">
          {t('roundUncover')} <kbd>Enter</kbd>
        </button>
      </div>
    </form>
  );
}
