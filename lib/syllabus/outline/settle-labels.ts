import type { Label } from './label.ts';
import type { ReadLine } from './read-line.ts';

/** The latest number of each family of labels. */
type Latest = Map<string, number>;

/**
 * Decides on labels that could as well be the first word of a row ("2 types of wave"). They stand where they open a
 * list or go on from the label before of their family, unless the next label there has the very number.
 */
export function settleLabels(lines: readonly ReadLine[]): ReadLine[] {
  const taken = takenBelow(lines);
  const latest: Latest = new Map();
  return lines.map((line, i) => {
    const label = labelOf(line);
    if (!label) return line;
    if (!label.sure && (taken.has(i) || !goesOn(label, latest))) {
      return { ...line, mark: { kind: 'none' }, text: line.unmarked };
    }
    note(label, latest);
    return line;
  });
}

const labelOf = ({ mark }: ReadLine): Label | null => ('label' in mark ? mark.label : null);

function note(label: Label, latest: Latest): void {
  for (const { family, value } of label.readings) latest.set(family, value);
}

/** Places of unsure labels whose number the next sure label of the family has. */
function takenBelow(lines: readonly ReadLine[]): Set<number> {
  const taken = new Set<number>();
  const next: Latest = new Map();
  for (const [i, line] of [...lines.entries()].reverse()) {
    const label = labelOf(line);
    if (label?.sure) note(label, next);
    else if (label?.readings.some(({ family, value }) => next.get(family) === value)) taken.add(i);
  }
  return taken;
}

function goesOn(label: Label, latest: Latest): boolean {
  return label.readings.some(({ family, value }) => {
    const before = latest.get(family);
    return before === undefined ? family.startsWith('1') && value === 1 : value === before + 1;
  });
}
