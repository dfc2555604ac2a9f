import { useState } from 'preact/hooks';
import type { Line, Question } from '#lib/model/item.ts';
import { changeLine, changeQuestion } from '#lib/store/actions/items.ts';
import { useDeck } from '../deck/deck-context.tsx';
import { useAction } from '../deck/use-action.ts';
import { Trouble } from '../parts/trouble.tsx';
import { Words } from '../parts/words.tsx';
import { t, tn } from '../text.ts';
import { DeleteButton } from './delete-button.tsx';
import { MarksField, TextField } from './write-item.tsx';

/** Questions, each with its answer; each can be changed or deleted. */
export function QuestionList({ questions }: { questions: Question[] }) {
  if (questions.length === 0) return <p class="soft">{t('questionsNone')}</p>;
  return (
    <ul class="items">
      {questions.map((question) => (
        <QuestionRow key={question.id} question={question} />
      ))}
    </ul>
  );
}

/** Note lines, each with its lead and rest; each can be changed or deleted. */
export function LineList({ lines }: { lines: Line[] }) {
  if (lines.length === 0) return <p class="soft">{t('linesNone')}</p>;
  return (
    <ul class="items">
      {lines.map((line) => (
        <LineRow key={line.id} line={line} />
      ))}
    </ul>
  );
}

function QuestionRow({ question }: { question: Question }) {
  const [editing, setEditing] = useState(false);
  if (editing) return <EditQuestion question={question} done={() => setEditing(false)} />;
  return (
    <li>
      <p class="wrap">
        <Words text={question.prompt} /> <span class="soft">{tn('marks', question.marks)}</span>
      </p>
      <p class="wrap covered">
        <Words text={question.answer} />
      </p>
      <RowButtons store="questions" id={question.id} name={question.prompt} edit={() => setEditing(true)} />
    </li>
  );
}

// What is left as it was is forgotten with the form: the next change starts from what is kept.
function EditQuestion({ question, done }: { question: Question; done(): void }) {
  const db = useDeck();
  const [prompt, setPrompt] = useState(question.prompt);
  const [answer, setAnswer] = useState(question.answer);
  const [marks, setMarks] = useState(question.marks);
  return (
    <EditForm save={() => changeQuestion(db, question.id, { prompt, answer, marks }, Date.now())} done={done}>
      <TextField label={t('questionPrompt')} value={prompt} rows={2} set={setPrompt} />
      <TextField label={t('questionAnswer')} value={answer} rows={3} set={setAnswer} />
      <MarksField marks={marks} set={setMarks} />
    </EditForm>
  );
}

function EditLine({ line, done }: { line: Line; done(): void }) {
  const db = useDeck();
  const [lead, setLead] = useState(line.lead);
  const [rest, setRest] = useState(line.rest);
  return (
    <EditForm save={() => changeLine(db, line.id, { lead, rest }, Date.now())} done={done}>
      <TextField label={t('lineLead')} value={lead} rows={1} set={setLead} />
      <TextField label={t('lineRest')} value={rest} rows={2} set={setRest} />
    </EditForm>
  );
}

function LineRow({ line }: { line: Line }) {
  const [editing, setEditing] = useState(false);
  if (editing) return <EditLine line={line} done={() => setEditing(false)} />;
  return (
    <li>
      <p class="wrap">
        <strong>
          <Words text={line.lead} />
        </strong>{' '}
        <Words text={line.rest} />
      </p>
      <RowButtons store="lines" id={line.id} name={line.lead} edit={() => setEditing(true)} />
    </li>
  );
}

interface EditFormProps {
  save(): Promise<void>;
  done(): void;
  children: preact.ComponentChildren;
}

function EditForm({ save, done, children }: EditFormProps) {
  const action = useAction();
  return (
    <li>
      <form
        class="stack"
        onSubmit={(event) => {
          event.preventDefault();
          void action.run(save).then((saved) => saved && done());
        }}
      >
        {children}
        <Trouble text={action.trouble} />
        <div class="row">
          <button class="main" disabled={action.busy}>
            {t('save')}
          </button>
          <button type="button" onClick={done}>
            {t('leaveAsItWas')}
          </button>
        </div>
      </form>
    </li>
  );
}

interface RowButtonsProps {
  store: 'questions' | 'lines';
  id: string;
  name: string;
  edit(): void;
}

function RowButtons({ store, id, name, edit }: RowButtonsProps) {
  return (
    <div class="row">
      <button class="plain" onClick={edit} aria-label={t('editNamed', name)}>
        {t('edit')}
      </button>
      <DeleteButton store={store} id={id} name={name} />
    </div>
  );
}
