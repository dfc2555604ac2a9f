import type { OutlineDraftRow } from '#lib/syllabus/outline-row.ts';
import { type ShareTrouble, checkShares, evenShares, scaleShares } from '#lib/syllabus/share-check.ts';
import { t } from '../../text.ts';

interface ShareNotesProps {
  rows: OutlineDraftRow[];
  change(rows: OutlineDraftRow[]): void;
}

/** Shares that cannot stand as they are, each with what can be done about it. */
export function ShareNotes({ rows, change }: ShareNotesProps) {
  const troubles = checkShares(rows);
  return (
    <>
      {troubles.map((trouble) => (
        <div class="remark stack" key={`${trouble.parent} ${trouble.kind}`} role="status">
          <p>{sentence(rows, trouble)}</p>
          <div class="row">
            {trouble.kind === 'not-whole' && (
              <button onClick={() => change(scaleShares(rows, trouble))}>
                {t('sharesScale', format(trouble.whole))}
              </button>
            )}
            <button onClick={() => change(evenShares(rows, trouble))}>{t('sharesEven')}</button>
          </div>
        </div>
      ))}
    </>
  );
}

const format = (number: number) => number.toLocaleString(undefined, { maximumFractionDigits: 1 });

function sentence(rows: OutlineDraftRow[], { kind, parent, sum, whole }: ShareTrouble): string {
  const above = rows[parent];
  const where = above ? t('sharesUnder', `${above.code} ${above.text}`.trim()) : t('sharesTop');
  if (kind === 'zero') return t('sharesZero', where);
  return kind === 'mixed' ? t('sharesMixed', where) : t('sharesNotWhole', where, format(sum), format(whole));
}
