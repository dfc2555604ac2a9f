import { useCallback, useRef, useState } from 'preact/hooks';
import { saveSyllabus } from '#lib/store/actions/courses.ts';
import { buildSyllabus, rowsOf } from '#lib/syllabus/build-syllabus.ts';
import { offRows } from '#lib/syllabus/share-check.ts';
import { useDeck } from '../../deck/deck-context.tsx';
import { useAction } from '../../deck/use-action.ts';
import type { Standing } from '../../derive/next-up.ts';
import { Trouble } from '../../parts/trouble.tsx';
import { useDrop } from '../../pdf/use-drop.ts';
import { t, tn } from '../../text.ts';
import { linkTo } from '../route.ts';
import { BringIn } from './bring-in.tsx';
import { Leftovers } from './leftovers.tsx';
import { OutlineEditor } from './outline-editor.tsx';
import { Reading } from './reading.tsx';
import { RowText } from './row-text.tsx';
import { useDraft } from './use-draft.ts';

/** The syllabus: bring one in, see the tree, put it right, save it. */
export function SyllabusView({ standing }: { standing: Standing }) {
  const db = useDeck();
  const action = useAction();
  const { deck } = standing;
  const saved = { topics: deck.topics, statements: deck.statements };
  const isNew = deck.topics.every(({ dropped }) => dropped);
  const state = useDraft(saved);
  const [text, setText] = useState('');
  const [savedCount, setSavedCount] = useState<number | null>(null);
  const { draft, progress } = state;
  const isOver = useFileDrop((file) => state.readFile(file, null));
  const save = async () => {
    const made = buildSyllabus(draft!.rows, saved, {
      courseId: deck.course.id,
      now: Date.now(),
      newId: () => crypto.randomUUID(),
    });
    const topics = [...made.topics, ...made.dropped];
    if (!(await action.run(() => saveSyllabus(db, deck.course.id, { topics, statements: made.statements }))))
      return;
    state.leave();
    setText('');
    setSavedCount(made.topics.length);
  };
  return (
    <div class={isOver ? 'stack drop-over' : 'stack'}>
      <h1>{t('pageSyllabus')}</h1>
      {savedCount !== null && !draft && (
        <p class="remark" role="status">
          {tn('syllabusSaved', savedCount)} <a href={linkTo('coverage')}>{t('popupSeeGaps')}</a>
        </p>
      )}
      {!draft && <Leftovers deck={deck} />}
      {!draft && !isNew && <SavedTree standing={standing} edit={state.editSaved} />}
      <Trouble text={state.trouble ?? action.trouble} />
      {progress && <Reading progress={progress} stop={state.stop} />}
      {!draft && !progress && (
        <BringIn first={isNew} text={text} setText={setText} read={state.readText} open={state.readFile} />
      )}
      {draft && (
        <OutlineEditor
          draft={draft}
          state={state}
          before={isNew ? null : deck}
          save={() => void save()}
          busy={action.busy}
        />
      )}
    </div>
  );
}

/** Takes dropped files with whatever is to be done with them now: the listeners stay. */
function useFileDrop(take: (file: File) => void): boolean {
  const latest = useRef(take);
  latest.current = take;
  return useDrop(useCallback((file: File) => latest.current(file), []));
}

function SavedTree({ standing, edit }: { standing: Standing; edit(): void }) {
  const rows = rowsOf(standing.deck);
  const off = offRows(rows);
  const topics = rows.filter(({ kind }) => kind === 'topic').length;
  return (
    <section class="sheet stack">
      <div class="row spread">
        <p class="soft">
          {tn('syllabusTopics', topics)} {tn('syllabusStatements', rows.length - topics)}
        </p>
        <button onClick={edit}>{t('syllabusEdit')}</button>
      </div>
      <ul class="tree">
        {rows.map((row, index) => (
          <li key={index} class={`row-${row.kind}`} style={{ '--depth': row.depth }}>
            <RowText row={row} off={off.has(index)} />
          </li>
        ))}
      </ul>
    </section>
  );
}
