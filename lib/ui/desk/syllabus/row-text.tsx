import { Fragment } from 'preact';
import type { OutlineDraftRow } from '#lib/syllabus/outline-row.ts';
import { t } from '../../text.ts';
import { shareText } from './share-text.ts';

/** A line of the syllabus: its number, its text, and what it says of shares, tiers and what is switched off. */
export function RowText({ row, off }: { row: OutlineDraftRow; off: boolean }) {
  const { code, text, share, unit = 'parts', group } = row;
  const chips = [share === null ? '' : shareText(share, unit), group, row.off ? t('rowIsOff') : ''].filter(
    Boolean,
  );
  return (
    <>
      {code && <span class="code">{code}</span>} <span class={off ? 'row-off' : undefined}>{text}</span>
      {chips.map((chip) => (
        <Fragment key={chip}>
          {' '}
          <span class="chip">{chip}</span>
        </Fragment>
      ))}
    </>
  );
}
