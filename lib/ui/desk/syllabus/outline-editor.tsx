import { useState } from 'preact/hooks';
import { takeIn } from '#lib/syllabus/edit-outline.ts';
import type { OutlineDraftRow } from '#lib/syllabus/outline-row.ts';
import { offRows } from '#lib/syllabus/share-check.ts';
import type { CourseDeck } from '#lib/store/course-deck.ts';
import { t, tn } from '../../text.ts';
import { Changes } from './changes.tsx';
import { FORMATS } from './formats.ts';
import { OutlineRowForm } from './outline-row-form.tsx';
import { ReadAs } from './read-as.tsx';
import { Remarks } from './remarks.tsx';
import { RowText } from './row-text.tsx';
import { ShareNotes } from './share-notes.tsx';
import { Tiers } from './tiers.tsx';
import type { Draft } from './draft.ts';
import type { DraftState } from './use-draft.ts';

interface OutlineEditorProps {
  draft: Draft;
  state: DraftState;
  /** The course as it is kept; null before its first syllabus, when there is nothing to compare with. */
  before: CourseDeck | null;
  save(): void;
  busy: boolean;
}

/** The tree as it was understood, each line of which can be put right before it is saved. */
export function OutlineEditor({ draft, state, before, save, busy }: OutlineEditorProps) {
  const { rows, remarks, source } = draft;
  const [open, setOpen] = useState<number | null>(null);
  const topics = rows.filter(({ kind }) => kind === 'topic').length;
  // The line that is open may be gone, or stand elsewhere.
  const changeAll = (next: OutlineDraftRow[]) => {
    setOpen(null);
    state.change(next);
  };
  const counted =
    source.is === 'text' ? FORMATS.find(({ format }) => format === source.format)!.counted : 'line';
  return (
    <section class="sheet stack" aria-label={t('syllabusDraft')}>
      <div class="row spread sticky">
        <p>
          {tn('syllabusTopics', topics)} {tn('syllabusStatements', rows.length - topics)}
        </p>
        <div class="row">
          <button
            disabled={!state.undo}
            onClick={() => {
              setOpen(null);
              state.undo?.();
            }}
          >
            {t('undo')}
          </button>
          <button onClick={state.leave}>{t('leaveAsItWas')}</button>
          <button class="main" disabled={busy || topics === 0} onClick={save}>
            {t('syllabusSave')}
          </button>
        </div>
      </div>
      <p class="soft">{t('syllabusFix')}</p>
      <ReadAs
        // Undo may bring other pages back.
        key={source.is === 'pdf' ? `${source.from} ${source.to}` : source.is}
        source={source}
        readText={state.readText}
        readPages={state.readPages}
      />
      {before && <Changes deck={before} rows={rows} change={changeAll} />}
      <ShareNotes rows={rows} change={changeAll} />
      <Tiers rows={rows} change={changeAll} />
      <Remarks
        remarks={remarks}
        counted={counted}
        taken={new Set(rows.flatMap(({ line }) => line ?? []))}
        takeIn={({ line, text = '' }) => changeAll(takeIn(rows, { line, text }))}
      />
      <Tree rows={rows} open={open} setOpen={setOpen} change={state.change} />
    </section>
  );
}

interface TreeProps {
  rows: OutlineDraftRow[];
  open: number | null;
  setOpen(index: number | null): void;
  change(rows: OutlineDraftRow[]): void;
}

function Tree({ rows, open, setOpen, change }: TreeProps) {
  const off = offRows(rows);
  return (
    <ul class="tree">
      {rows.map((row, index) => (
        <li key={index} class={`row-${row.kind}`} style={{ '--depth': row.depth }}>
          {open === index ? (
            <OutlineRowForm
              rows={rows}
              index={index}
              change={(next, at) => {
                change(next);
                setOpen(at);
              }}
              close={() => setOpen(null)}
            />
          ) : (
            <button class="tree-row" onClick={() => setOpen(index)}>
              <span class="unseen">{row.kind === 'topic' ? t('topic') : t('statement')}: </span>
              <RowText row={row} off={off.has(index)} />
            </button>
          )}
        </li>
      ))}
    </ul>
  );
}
