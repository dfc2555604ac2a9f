import { useState } from 'preact/hooks';
import { saveSyllabus } from '#lib/store/actions/courses.ts';
import { type OutlineDraftRow, buildSyllabus, rowsOf } from '#lib/syllabus/build-syllabus.ts';
import { type OutlineRemark, readOutline } from '#lib/syllabus/read-outline.ts';
import { useDeck } from '../../deck/deck-context.tsx';
import { useAction } from '../../deck/use-action.ts';
import type { Standing } from '../../derive/next-up.ts';
import { Trouble } from '../../parts/trouble.tsx';
import { t, tell, tn } from '../../text.ts';
import { linkTo } from '../route.ts';
import { OutlineEditor } from './outline-editor.tsx';
import { PasteSyllabus } from './paste-syllabus.tsx';

interface Draft {
  rows: OutlineDraftRow[];
  remarks: OutlineRemark[];
}

/** The syllabus: bring one in, see the tree, put it right, save it. */
export function SyllabusView({ standing }: { standing: Standing }) {
  const db = useDeck();
  const action = useAction();
  const { deck } = standing;
  const saved = { topics: deck.topics, statements: deck.statements };
  const isNew = deck.topics.every(({ off }) => off);
  // Undo goes back through every change since the draft was begun.
  const [history, setHistory] = useState<Draft[]>([]);
  const [trouble, setTrouble] = useState<string | null>(null);
  const [savedCount, setSavedCount] = useState<number | null>(null);
  const draft = history.at(-1);
  const push = (next: Draft) => {
    setHistory([...history, next]);
    setSavedCount(null);
  };
  const read = (text: string) => {
    setTrouble(null);
    try {
      const { rows, remarks } = readOutline(text);
      push({ rows, remarks });
    } catch (error) {
      setTrouble(tell(error));
    }
  };
  const save = async () => {
    const made = buildSyllabus(draft!.rows, saved, {
      courseId: deck.course.id,
      now: Date.now(),
      newId: () => crypto.randomUUID(),
    });
    const topics = [...made.topics, ...made.dropped];
    if (!(await action.run(() => saveSyllabus(db, deck.course.id, { topics, statements: made.statements }))))
      return;
    setHistory([]);
    setSavedCount(made.topics.length);
  };
  return (
    <div class="stack">
      <h1>{t('pageSyllabus')}</h1>
      {savedCount !== null && (
        <p class="remark" role="status">
          {tn('syllabusSaved', savedCount)} <a href={linkTo('coverage')}>{t('popupSeeGaps')}</a>
        </p>
      )}
      {!draft && !isNew && (
        <SavedTree standing={standing} edit={() => push({ rows: rowsOf(saved), remarks: [] })} />
      )}
      {!draft && <PasteSyllabus first={isNew} read={read} fail={(error) => setTrouble(tell(error))} />}
      <Trouble text={trouble ?? action.trouble} />
      {draft && (
        <OutlineEditor
          rows={draft.rows}
          remarks={draft.remarks}
          change={(rows) => push({ ...draft, rows })}
          undo={history.length > 1 ? () => setHistory(history.slice(0, -1)) : null}
          save={() => void save()}
          leave={() => setHistory([])}
          busy={action.busy}
        />
      )}
    </div>
  );
}

function SavedTree({ standing, edit }: { standing: Standing; edit(): void }) {
  const rows = rowsOf(standing.deck);
  return (
    <section class="sheet stack">
      <div class="row spread">
        <p class="soft">{tn('syllabusTopics', rows.filter(({ kind }) => kind === 'topic').length)}</p>
        <button onClick={edit}>{t('syllabusEdit')}</button>
      </div>
      <ul class="tree">
        {rows.map((row, index) => (
          <li key={index} class={`row-${row.kind}`} style={{ '--depth': row.depth }}>
            {row.code && <span class="code">{row.code}</span>} {row.text}
          </li>
        ))}
      </ul>
    </section>
  );
}
