import { useEffect, useId, useRef } from 'preact/hooks';
import type { ShareUnit } from '#lib/model/topic.ts';
import type { OutlineDraftRow } from '#lib/syllabus/build-syllabus.ts';
import {
  changeRow,
  indentRow,
  insertRowAfter,
  moveRowDown,
  moveRowUp,
  outdentRow,
  removeBranch,
  removeRow,
} from '#lib/syllabus/edit-outline.ts';
import { LONGEST } from '#lib/syllabus/outline-row.ts';
import { switchedRow } from '#lib/syllabus/groups.ts';
import { t } from '../../text.ts';
import { UNIT_NAMES } from './share-text.ts';

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
  const hasChildren = (rows[index + 1]?.depth ?? 0) > row.depth;
  const edits = [
    { label: t('rowIn'), run: () => change(indentRow(rows, index), index) },
    { label: t('rowOut'), run: () => change(outdentRow(rows, index), index) },
    { label: t('rowUp'), run: () => moved(moveRowUp(rows, index)) },
    { label: t('rowDown'), run: () => moved(moveRowDown(rows, index)) },
    { label: t('rowAfter'), run: () => change(insertRowAfter(rows, index), index + 1) },
    { label: t('rowRemove'), run: () => change(removeRow(rows, index), null) },
    ...(hasChildren
      ? [{ label: t('rowRemoveAll'), run: () => change(removeBranch(rows, index), null) }]
      : []),
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
      <TierFields id={id} rows={rows} index={index} change={change} />
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

/** What the line says beside its text: its share of the exam, its tier, and whether it is switched off. */
function TierFields({ id, rows, index, change }: Omit<OutlineRowFormProps, 'close'> & { id: string }) {
  const row = rows[index]!;
  const put = (part: Parameters<typeof changeRow>[2]) => change(changeRow(rows, index, part), index);
  return (
    <div class="row-fields">
      {row.kind === 'topic' && (
        <>
          <div class="field">
            <label for={`${id}-share`}>{t('rowShare')}</label>
            <input
              id={`${id}-share`}
              type="number"
              min={0}
              step="any"
              placeholder={t('rowShareEven')}
              value={row.share ?? ''}
              onChange={(event) => {
                const share = event.currentTarget.valueAsNumber;
                put({ share: share >= 0 ? share : null });
              }}
            />
          </div>
          <div class="field">
            <label for={`${id}-unit`}>{t('rowUnit')}</label>
            <select
              id={`${id}-unit`}
              value={row.unit ?? 'parts'}
              onChange={(event) => put({ unit: event.currentTarget.value as ShareUnit })}
            >
              {Object.entries(UNIT_NAMES).map(([unit, name]) => (
                <option key={unit} value={unit}>
                  {t(name)}
                </option>
              ))}
            </select>
          </div>
        </>
      )}
      <div class="field">
        <label for={`${id}-group`}>{t('rowGroup')}</label>
        <input
          id={`${id}-group`}
          maxLength={LONGEST.group}
          value={row.group ?? ''}
          onChange={(event) => put({ group: event.currentTarget.value })}
        />
      </div>
      <label class="check">
        <input
          type="checkbox"
          checked={row.off ?? false}
          onChange={(event) => change(rows.with(index, switchedRow(row, event.currentTarget.checked)), index)}
        />
        {t('rowOff')}
      </label>
    </div>
  );
}
