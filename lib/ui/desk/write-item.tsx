import { useId, useLayoutEffect, useRef, useState } from 'preact/hooks';
import type { Statement } from '#lib/model/topic.ts';
import type { Question } from '#lib/model/item.ts';
import { addLine, addQuestion } from '#lib/store/actions/items.ts';
import { useDeck } from '../deck/deck-context.tsx';
import { useAction } from '../deck/use-action.ts';
import { Trouble } from '../parts/trouble.tsx';
import { FormulaCheck } from '../parts/words.tsx';
import { t } from '../text.ts';
import { Objections } from './drafts.tsx';
import { ItemTicks } from './statement-ticks.tsx';

/** Where a new item belongs. */
export interface ItemPlace {
  courseId: string;
  topicId: string;
  clipId: string | null;
  /** The note line that a question stands beside. */
  lineId?: string;
  /** Statements of the topic, of which it may answer some. */
  statements: Statement[];
  /** Ids of those that are ticked at first. */
  ticked: string[];
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

/** Which statements the next item answers: until the student ticks, those that its place says. */
function useTicks({ courseId, topicId, clipId, lineId, statements, ticked: first }: ItemPlace) {
  const [chosen, setChosen] = useState<string[] | null>(null);
  const ticked = chosen ?? first;
  // Ticks of another topic do not come along when the topic is changed.
  const statementIds = ticked.filter((id) => statements.some((one) => one.id === id));
  return {
    ticked,
    tick: setChosen,
    reset: () => setChosen(null),
    place: { courseId, topicId, clipId, statementIds, ...(lineId !== undefined && { lineId }) },
  };
}

interface WriteQuestionProps {
  place: ItemPlace;
  /** Fills the form, to be changed and added; each new one anew. */
  draft?: { prompt: string; answer: string } | null;
  /** Those that are there: what is nearly the same is pointed out. */
  questions: readonly Question[];
  /** Called after each that was added. */
  done?: () => void;
}

/** A form that writes questions, one after another. */
export function WriteQuestion({ place, draft = null, questions, done: tell }: WriteQuestionProps) {
  const db = useDeck();
  const action = useAction();
  const [prompt, setPrompt] = useState('');
  const [answer, setAnswer] = useState('');
  const [marks, setMarks] = useState(1);
  const ticks = useTicks(place);
  const first = useRef<HTMLTextAreaElement>(null);
  useLayoutEffect(() => {
    if (!draft) return;
    setPrompt(draft.prompt);
    setAnswer(draft.answer);
    first.current!.focus();
  }, [draft]);
  const save = async () => {
    const done = await action.run(() =>
      addQuestion(db, { ...ticks.place, prompt, answer, marks }, Date.now()),
    );
    if (!done) return;
    setPrompt('');
    setAnswer('');
    setMarks(1);
    ticks.reset();
    first.current!.focus();
    tell?.();
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
      <Objections prompt={prompt} questions={questions} />
      <TextField label={t('questionAnswer')} value={answer} rows={3} set={setAnswer} />
      <MarksField marks={marks} set={setMarks} />
      <ItemTicks statements={place.statements} ticked={ticks.ticked} tick={ticks.tick} />
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
  const ticks = useTicks(place);
  const first = useRef<HTMLTextAreaElement>(null);
  const save = async () => {
    if (!(await action.run(() => addLine(db, { ...ticks.place, lead, rest }, Date.now())))) return;
    setLead('');
    setRest('');
    ticks.reset();
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
      <ItemTicks statements={place.statements} ticked={ticks.ticked} tick={ticks.tick} />
      <Trouble text={action.trouble} />
      <div>
        <button class="main" disabled={action.busy}>
          {t('lineAdd')}
        </button>
      </div>
    </form>
  );
}
