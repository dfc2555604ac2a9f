import { describe, expect, it } from 'vitest';
import { type OutlineDraftRow, buildSyllabus } from '#lib/syllabus/build-syllabus.ts';
import { compareSyllabus, isUnchanged } from '#lib/syllabus/compare-syllabus.ts';
import { readOutline } from '#lib/syllabus/read-outline.ts';
import type { Syllabus } from '#lib/syllabus/rows-of.ts';
import { MORNING, newId } from '#tests/unit/builders.ts';

const courseId = newId();
const rowsFrom = (...lines: string[]): OutlineDraftRow[] => readOutline(lines.join('\n')).rows;
const build = (rows: OutlineDraftRow[], before: Syllabus = { topics: [], statements: [] }) =>
  buildSyllabus(rows, before, { courseId, now: MORNING, newId });

const OLD = [
  '1 Sea water',
  '1.1 Salinity and composition',
  '(a) state what salinity is',
  '1.2 Heat capacity and the ocean heat store',
  '2 Waves',
  '2.1 Swell',
  '2.2 Surf',
  '3 Sea ice',
];
const before = build(rowsFrom(...OLD));
const topicOf = (title: string) => before.topics.find((topic) => topic.title === title)!;

const change = (rows: OutlineDraftRow[]) => {
  const built = build(rows, before);
  const changes = compareSyllabus(before, built);
  return {
    built,
    changes,
    added: changes.added.map(({ title }) => title),
    dropped: changes.dropped.map(({ title }) => title),
    renamed: changes.renamed.map((pair) => `${pair.before.title} > ${pair.after.title}`),
    moved: changes.moved.map(({ after }) => after.title),
  };
};

describe('a newer version', () => {
  it('of the same text changes nothing', () => {
    expect(isUnchanged(change(rowsFrom(...OLD)).changes)).toBe(true);
  });

  it('shows what was added, dropped, renamed and moved, and matched topics keep their ids', () => {
    const { built, added, dropped, renamed, moved } = change(
      rowsFrom(
        '1 Sea water',
        '1.1 Stability of the water column',
        '1.2 Salinity and composition',
        '(a) state what salinity is',
        '1.3 Heat capacity and heat stored in the ocean',
        '1.4 Surf',
        '2 Waves',
        '2.1 Swell',
        '3 Light in the sea',
      ),
    );
    expect(added).toEqual(['Stability of the water column', 'Light in the sea']);
    expect(dropped).toEqual(['Sea ice']);
    expect(renamed).toEqual([
      'Salinity and composition > Salinity and composition',
      'Heat capacity and the ocean heat store > Heat capacity and heat stored in the ocean',
      'Surf > Surf',
    ]);
    expect(moved).toEqual([]);
    for (const [old, now] of [
      ['Salinity and composition', 'Salinity and composition'],
      ['Heat capacity and the ocean heat store', 'Heat capacity and heat stored in the ocean'],
      ['Surf', 'Surf'],
    ])
      expect(built.topics.find(({ title }) => title === now)?.id).toBe(topicOf(old!).id);
    expect(built.statements.map(({ id }) => id)).toEqual(before.statements.map(({ id }) => id));
  });

  it('does not take another topic that has got an old number for the old one', () => {
    const { added, dropped } = change(rowsFrom(...OLD.slice(0, 7), '3 Optics'));
    expect(added).toEqual(['Optics']);
    expect(dropped).toEqual(['Sea ice']);
  });

  it('takes a topic with the same number and something in common for the old one', () => {
    const { renamed, added } = change(rowsFrom(...OLD.slice(0, 7), '3 Ice and icebergs'));
    expect(renamed).toEqual(['Sea ice > Ice and icebergs']);
    expect(added).toEqual([]);
  });

  it('moves a topic under another', () => {
    const rows = rowsFrom('1 Sea water', '1.1 Salinity and composition', '(a) state what salinity is');
    const moved = change([
      ...rows,
      { kind: 'topic', depth: 1, code: '3', text: 'Sea ice', share: null },
      ...rowsFrom('1.2 Heat capacity and the ocean heat store').map((row) => ({ ...row, depth: 1 })),
      ...rowsFrom('2 Waves', '2.1 Swell', '2.2 Surf'),
    ]);
    expect(moved.moved).toEqual(['Sea ice']);
    expect(moved.added.concat(moved.dropped)).toEqual([]);
  });

  it('obeys the student who says that a topic is new, or that it is an old one', () => {
    const rows = rowsFrom(...OLD.slice(0, 7), '3 Ice and icebergs');
    const apart = change(rows.map((row) => (row.code === '3' ? { ...row, isNew: true } : row)));
    expect([apart.added, apart.dropped]).toEqual([['Ice and icebergs'], ['Sea ice']]);
    const other = rowsFrom(...OLD.slice(0, 7), '3 Optics').map((row) =>
      row.text === 'Optics' ? { ...row, id: topicOf('Sea ice').id } : row,
    );
    expect(change(other).renamed).toEqual(['Sea ice > Optics']);
  });

  it('counts statements that come, go or are reworded', () => {
    const { changes } = change(
      rowsFrom(...OLD.map((line) => (line.startsWith('(a)') ? '(a) state what absolute salinity is' : line))),
    );
    expect(changes.statements).toEqual({ added: [], dropped: [], reworded: 1 });
    expect(isUnchanged(changes)).toBe(false);
    const gone = change(rowsFrom(...OLD.filter((line) => !line.startsWith('(a)'))));
    expect(gone.changes.statements.dropped.map(({ text }) => text)).toEqual(['state what salinity is']);
  });

  it('a topic that was dropped and comes back is added, with its id', () => {
    const without = build(rowsFrom(...OLD.slice(0, 7)), before);
    const kept = { topics: [...without.topics, ...without.dropped], statements: without.statements };
    const back = build(rowsFrom(...OLD), kept);
    expect(compareSyllabus(kept, back).added.map(({ id }) => id)).toEqual([topicOf('Sea ice').id]);
  });
});
