import { useEffect, useId, useRef } from 'preact/hooks';
import type { OutlineDraftRow } from '#lib/syllabus/build-syllabus.ts';
import {
  changeRow,
  indentRow,
  insertRowAfter,
  moveRowDown,
  moveRowUp,
  outdentRow,
  removeRow,
} from '#lib/syllabus/edit-outline.ts';
import { LONGEST } from '#lib/syllabus/outline-row.ts';
import { t } from '../../text.ts';

interface OutlineRowFormProps {
  rows: OutlineDraftRow[];
  index: number;
  /** The rows after an edit, and the row that is open then. */
  change(rows: OutlineDraftRow[], open: number | null): void;
  close(): void;
}

/** One line of the syllabus, opened: its code, its text, what it is and where it stands. */
export function OutlineRowForm({ rows, index, change, close }: OutlineRowFormProps) {
  const id = useId();
  const text = useRef<HTMLInputElement>(null);
  useEffect(() => text.current!.focus(), []);
  const row = rows[index]!;
  const edits = [
    { label: t('rowIn'), run: () => change(indentRow(rows, index), index) },
    { label: t('rowOut'), run: () => change(outdentRow(rows, index), index) },
    { label: t('rowUp'), run: () => moved(moveRowUp(rows, index)) },
    { label: t('rowDown'), run: () => moved(moveRowDown(rows, index)) },
    { label: t('rowAfter'), run: () => change(insertRowAfter(rows, index), index + 1) },
    { label: t('rowRemove'), run: () => change(removeRow(rows, index), null) },
  ];
  const moved = (next: OutlineDraftRow[]) => change(next, next.indexOf(row));
  return (
    <form
      class="row-form"
      onSubmit={(event) => {
        event.preventDefault();
        close();
      }}
      onKeyDown={(event) => event.key === 'Escape' && close()}
    >
      <div class="row-fields">
        <div class="field">
          <label for={`${id}-code`}>{t('rowCode')}</label>
          <input
            id={`${id}-code`}
            maxLength={LONGEST.code}
            value={row.code}
            onChange={(event) => change(changeRow(rows, index, { code: event.currentTarget.value }), index)}
          />
        </div>
        <div class="field grow">
          <label for={`${id}-text`}>{t('rowText')}</label>
          <input
            id={`${id}-text`}
            ref={text}
            maxLength={row.kind === 'topic' ? LONGEST.title : LONGEST.statement}
            required
            value={row.text}
            onChange={(event) => change(changeRow(rows, index, { text: event.currentTarget.value }), index)}
          />
        </div>
        <div class="field">
          <label for={`${id}-kind`}>{t('rowKind')}</label>
          <select
            id={`${id}-kind`}
            value={row.kind}
            onChange={(event) =>
              change(
                changeRow(rows, index, { kind: event.currentTarget.value as 'topic' | 'statement' }),
                index,
              )
            }
          >
            <option value="topic">{t('topic')}</option>
            <option value="statement">{t('statement')}</option>
          </select>
        </div>
      </div>
      <div class="row">
        {edits.map(({ label, run }) => (
          <button type="button" key={label} onClick={run}>
            {label}
          </button>
        ))}
        <button class="main">{t('rowDone')}</button>
      </div>
    </form>
  );
}
