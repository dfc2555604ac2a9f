import { useEffect, useRef } from 'preact/hooks';
import { type TierGroup, groupsOf, switchGroup } from '#lib/syllabus/groups.ts';
import type { OutlineDraftRow } from '#lib/syllabus/outline-row.ts';
import { t, tn } from '../../text.ts';

interface TiersProps {
  rows: OutlineDraftRow[];
  change(rows: OutlineDraftRow[]): void;
}

/** The tiers and options that the syllabus names: those the student does not sit are switched off as a whole. */
export function Tiers({ rows, change }: TiersProps) {
  const groups = groupsOf(rows);
  if (groups.length === 0) return null;
  return (
    <fieldset class="field">
      <legend>{t('tiers')}</legend>
      <p class="soft">{t('tiersHow')}</p>
      {groups.map((group) => (
        <Tier key={group.name} group={group} change={(off) => change(switchGroup(rows, group.name, off))} />
      ))}
    </fieldset>
  );
}

function Tier({ group, change }: { group: TierGroup; change(off: boolean): void }) {
  const box = useRef<HTMLInputElement>(null);
  // Some of it on, some off: a state that only a script can give to a box.
  useEffect(() => {
    box.current!.indeterminate = group.off === null;
  });
  return (
    <label class="check">
      <input
        ref={box}
        type="checkbox"
        checked={group.off === false}
        onChange={(event) => change(!event.currentTarget.checked)}
      />
      <span>
        {group.name} <span class="soft">{tn('tierLines', group.rows)}</span>
      </span>
    </label>
  );
}
