import { useLayoutEffect, useRef, useState } from 'preact/hooks';
import { t } from '../text.ts';

type Outcome = 'copied' | 'refused' | null;

interface CopyTextProps {
  text: string;
  /** What the button says. */
  button: string;
  /** What the text is. */
  label: string;
  /** What is said where the browser copies nothing: the text is shown, selected. */
  selected: string;
  rows?: number;
}

/** A button that copies a text; where the browser refuses, the text stands there to be copied by hand. */
export function CopyText({ text, button, label, selected, rows = 3 }: CopyTextProps) {
  const [outcome, setOutcome] = useState<Outcome>(null);
  const field = useRef<HTMLTextAreaElement>(null);
  const copy = () =>
    navigator.clipboard.writeText(text).then(
      () => setOutcome('copied'),
      () => setOutcome('refused'),
    );
  useLayoutEffect(() => {
    if (outcome === 'refused') field.current!.select();
  }, [outcome]);
  return (
    <>
      <div class="row">
        <button type="button" onClick={() => void copy()}>
          {button}
        </button>
        <span class="soft" role="status">
          {outcome === 'copied' && t('copied')}
          {outcome === 'refused' && selected}
        </span>
      </div>
      {outcome === 'refused' && <textarea ref={field} readOnly rows={rows} aria-label={label} value={text} />}
    </>
  );
}
