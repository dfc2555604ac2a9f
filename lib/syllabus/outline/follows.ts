import type { Label } from './label.ts';
import type { ReadLine } from './read-line.ts';

/** Whether a marked line goes on from another: the next of its list, or one within the same chapter by its number. */
export function follows(before: Pick<ReadLine, 'mark'>, after: Pick<ReadLine, 'mark'>): boolean {
  if (before.mark.kind === 'bullet')
    return after.mark.kind === 'bullet' && after.mark.sign === before.mark.sign;
  if (before.mark.kind !== 'label' || after.mark.kind !== 'label') return false;
  return (
    isSameChapter(before.mark.label, after.mark.label) || isNextInList(before.mark.label, after.mark.label)
  );
}

function isSameChapter(before: Label, after: Label): boolean {
  if (!before.path || !after.path || after.word) return false;
  return after.path.length > 1 && before.path[0] === after.path[0];
}

function isNextInList(before: Label, after: Label): boolean {
  return after.readings.some((to) =>
    before.readings.some((from) => from.family === to.family && to.value === from.value + 1),
  );
}
