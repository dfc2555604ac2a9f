import { useState } from 'preact/hooks';
import type { Line, Question } from '#lib/model/item.ts';
import type { Statement } from '#lib/model/topic.ts';
import { changeLine, changeQuestion } from '#lib/store/actions/items.ts';
import type { Standing } from '../derive/next-up.ts';
import { useDeck } from '../deck/deck-context.tsx';
import { useAction } from '../deck/use-action.ts';
import { Trouble } from '../parts/trouble.tsx';
import { Words } from '../parts/words.tsx';
import { t, tn } from '../text.ts';
import { itemAnchor } from './at-item.tsx';
import { DeleteButton } from './delete-button.tsx';
import { ItemForgetting } from './forgetting.tsx';
import { ItemLacks } from './item-lacks.tsx';
import { ItemTicks, statementsOf } from './statement-ticks.tsx';
import { MarksField, TextField } from './write-item.tsx';

/** Questions, each with its answer; each can be changed or deleted. */
export function QuestionList({ questions, standing }: { questions: Question[]; standing: Standing }) {
  if (questions.length === 0) return <p class="soft">{t('questionsNone')}</p>;
  return (
    <ul class="items">
      {questions.map((question) => (
        <QuestionRow key={question.id} question={question} standing={standing} />
      ))}
    </ul>
  );
}

/** Note lines, each with its lead and rest; each can be changed or deleted. */
export function LineList({ lines, standing }: { lines: Line[]; standing: Standing }) {
  if (lines.length === 0) return <p class="soft">{t('linesNone')}</p>;
  return (
    <ul class="items">
      {lines.map((line) => (
        <LineRow key={line.id} line={line} standing={standing} />
      ))}
    </ul>
  );
}

function QuestionRow({ question, standing }: { question: Question; standing: Standing }) {
  const [editing, setEditing] = useState(false);
  if (editing)
    return (
      <EditQuestion
        question={question}
        statements={standing.deck.statements}
        done={() => setEditing(false)}
      />
    );
  return (
    <li id={itemAnchor(question.id)} tabIndex={-1}>
      <p class="wrap">
        <Words text={question.prompt} /> <span class="soft">{tn('marks', question.marks)}</span>
      </p>
      <p class="wrap covered">
        <Words text={question.answer} />
      </p>
      <ItemLacks standing={standing} id={question.id} />
      <ItemForgetting standing={standing} id={question.id} />
      <RowButtons store="questions" id={question.id} name={question.prompt} edit={() => setEditing(true)} />
    </li>
  );
}

interface EditProps {
  statements: Statement[];
  done(): void;
}

// What is left as it was is forgotten with the form: the next change starts from what is kept.
function EditQuestion({ question, statements, done }: EditProps & { question: Question }) {
  const db = useDeck();
  const [prompt, setPrompt] = useState(question.prompt);
  const [answer, setAnswer] = useState(question.answer);
  const [marks, setMarks] = useState(question.marks);
  const [statementIds, setStatementIds] = useState(question.statementIds);
  return (
    <EditForm
      save={() => changeQuestion(db, question.id, { prompt, answer, marks, statementIds }, Date.now())}
      done={done}
    >
      <TextField label={t('questionPrompt')} value={prompt} rows={2} set={setPrompt} />
      <TextField label={t('questionAnswer')} value={answer} rows={3} set={setAnswer} />
      <MarksField marks={marks} set={setMarks} />
      <ItemTicks
        statements={statementsOf(statements, question.topicId)}
        ticked={statementIds}
        tick={setStatementIds}
      />
    </EditForm>
  );
}

function EditLine({ line, statements, done }: EditProps & { line: Line }) {
  const db = useDeck();
  const [lead, setLead] = useState(line.lead);
  const [rest, setRest] = useState(line.rest);
  const [statementIds, setStatementIds] = useState(line.statementIds);
  return (
    <EditForm save={() => changeLine(db, line.id, { lead, rest, statementIds }, Date.now())} done={done}>
      <TextField label={t('lineLead')} value={lead} rows={1} set={setLead} />
      <TextField label={t('lineRest')} value={rest} rows={2} set={setRest} />
      <ItemTicks
        statements={statementsOf(statements, line.topicId)}
        ticked={statementIds}
        tick={setStatementIds}
      />
    </EditForm>
  );
}

function LineRow({ line, standing }: { line: Line; standing: Standing }) {
  const [editing, setEditing] = useState(false);
  if (editing)
    return <EditLine line={line} statements={standing.deck.statements} done={() => setEditing(false)} />;
  return (
    <li id={itemAnchor(line.id)} tabIndex={-1}>
      <p class="wrap">
        <strong>
          <Words text={line.lead} />
        </strong>{' '}
        <Words text={line.rest} />
      </p>
      <ItemLacks standing={standing} id={line.id} />
      <ItemForgetting standing={standing} id={line.id} />
      <RowButtons store="lines" id={line.id} name={line.lead} edit={() => setEditing(true)} />
    </li>
  );
}

interface EditFormProps {
  save(): Promise<void>;
  done(): void;
  children: preact.ComponentChildren;
}

/** A row being changed: saved, or left as it was. */
export function EditForm({ save, done, children }: EditFormProps) {
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
