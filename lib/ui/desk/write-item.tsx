import { useId, useRef, useState } from 'preact/hooks';
import { addLine, addQuestion } from '#lib/store/actions/items.ts';
import { useDeck } from '../deck/deck-context.tsx';
import { useAction } from '../deck/use-action.ts';
import { Trouble } from '../parts/trouble.tsx';
import { FormulaCheck } from '../parts/words.tsx';
import { t } from '../text.ts';

/** Where a new item belongs. */
export interface ItemPlace {
  courseId: string;
  topicId: string;
  clipId: string | null;
}

interface FieldProps {
  label: string;
  value: string;
  rows: number;
  set(value: string): void;
  inputRef?: { current: HTMLTextAreaElement | null };
}

/** A labelled text of one or more lines. */
export function TextField({ label, value, rows, set, inputRef }: FieldProps) {
  const id = useId();
  return (
    <div class="field">
      <label for={id}>{label}</label>
      <textarea
        id={id}
        ref={inputRef ?? null}
        rows={rows}
        required
        value={value}
        onInput={(event) => set(event.currentTarget.value)}
      />
      <FormulaCheck text={value} />
    </div>
  );
}

/** Marks of a question. */
export function MarksField({ marks, set }: { marks: number; set(marks: number): void }) {
  const id = useId();
  return (
    <div class="field marks-field">
      <label for={id}>{t('questionMarks')}</label>
      <input
        id={id}
        type="number"
        min={1}
        max={20}
        step={1}
        required
        value={marks}
        onInput={(event) => set(event.currentTarget.valueAsNumber)}
      />
    </div>
  );
}

/** A form that writes questions, one after another. */
export function WriteQuestion({ place }: { place: ItemPlace }) {
  const db = useDeck();
  const action = useAction();
  const [prompt, setPrompt] = useState('');
  const [answer, setAnswer] = useState('');
  const [marks, setMarks] = useState(1);
  const first = useRef<HTMLTextAreaElement>(null);
  const save = async () => {
    const done = await action.run(() => addQuestion(db, { ...place, prompt, answer, marks }, Date.now()));
    if (!done) return;
    setPrompt('');
    setAnswer('');
    setMarks(1);
    first.current!.focus();
  };
  return (
    <form
      class="stack write-question"
      onSubmit={(event) => {
        event.preventDefault();
        void save();
      }}
    >
      <TextField label={t('questionPrompt')} value={prompt} rows={2} set={setPrompt} inputRef={first} />
      <TextField label={t('questionAnswer')} value={answer} rows={3} set={setAnswer} />
      <MarksField marks={marks} set={setMarks} />
      <Trouble text={action.trouble} />
      <div>
        <button class="main" disabled={action.busy}>
          {t('questionAdd')}
        </button>
      </div>
    </form>
  );
}

/** A form that writes note lines, one after another. */
export function WriteLine({ place }: { place: ItemPlace }) {
  const db = useDeck();
  const action = useAction();
  const [lead, setLead] = useState('');
  const [rest, setRest] = useState('');
  const first = useRef<HTMLTextAreaElement>(null);
  const save = async () => {
    if (!(await action.run(() => addLine(db, { ...place, lead, rest }, Date.now())))) return;
    setLead('');
    setRest('');
    first.current!.focus();
  };
  return (
    <form
      class="stack write-line"
      onSubmit={(event) => {
        event.preventDefault();
        void save();
      }}
    >
      <TextField label={t('lineLead')} value={lead} rows={1} set={setLead} inputRef={first} />
      <TextField label={t('lineRest')} value={rest} rows={2} set={setRest} />
      <Trouble text={action.trouble} />
      <div>
        <button class="main" disabled={action.busy}>
          {t('lineAdd')}
        </button>
      </div>
    </form>
  );
}
