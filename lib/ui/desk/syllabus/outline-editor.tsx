import { useState } from 'preact/hooks';
import type { OutlineDraftRow } from '#lib/syllabus/build-syllabus.ts';
import type { OutlineRemark } from '#lib/syllabus/read-outline.ts';
import { t, tn } from '../../text.ts';
import { remarkText } from './remark-text.ts';
import { OutlineRowForm } from './outline-row-form.tsx';

interface OutlineEditorProps {
  rows: OutlineDraftRow[];
  remarks: OutlineRemark[];
  change(rows: OutlineDraftRow[]): void;
  undo: (() => void) | null;
  save(): void;
  leave(): void;
  busy: boolean;
}

/** The tree as it was understood, each line of which can be put right before it is saved. */
export function OutlineEditor({ rows, remarks, change, undo, save, leave, busy }: OutlineEditorProps) {
  const [open, setOpen] = useState<number | null>(null);
  const topics = rows.filter(({ kind }) => kind === 'topic').length;
  return (
    <section class="sheet stack" aria-label={t('syllabusDraft')}>
      <div class="row spread sticky">
        <p>
          {tn('syllabusTopics', topics)} {tn('syllabusStatements', rows.length - topics)}
        </p>
        <div class="row">
          <button
            disabled={!undo}
            onClick={() => {
              // The line that is open may be gone, or stand elsewhere.
              setOpen(null);
              undo?.();
            }}
          >
            {t('undo')}
          </button>
          <button onClick={leave}>{t('leaveAsItWas')}</button>
          <button class="main" disabled={busy || topics === 0} onClick={save}>
            {t('syllabusSave')}
          </button>
        </div>
      </div>
      <p class="soft">{t('syllabusFix')}</p>
      {remarks.length > 0 && <Remarks remarks={remarks} />}
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
                {row.code && <span class="code">{row.code}</span>} {row.text}
              </button>
            )}
          </li>
        ))}
      </ul>
    </section>
  );
}

const REMARKS_SHOWN = 20;

function Remarks({ remarks }: { remarks: OutlineRemark[] }) {
  return (
    <details class="remark">
      <summary>{tn('remarks', remarks.length)}</summary>
      <ul class="plain-list">
        {remarks.slice(0, REMARKS_SHOWN).map((remark) => (
          <li key={`${remark.line} ${remark.about}`}>{remarkText(remark, 'line')}</li>
        ))}
      </ul>
    </details>
  );
}
