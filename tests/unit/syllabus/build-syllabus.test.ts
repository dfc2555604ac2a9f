import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { Statement, Topic } from '#lib/model/topic.ts';
import { type OutlineDraftRow, buildSyllabus, rowsOf } from '#lib/syllabus/build-syllabus.ts';
import { normaliseRows } from '#lib/syllabus/normalise-rows.ts';
import { readOutline } from '#lib/syllabus/read-outline.ts';
import { MORNING, newId } from '#tests/unit/builders.ts';

const courseId = newId();
const LATER = MORNING + 86_400_000;
const NOTHING = { topics: [], statements: [] };
const rowsFrom = (...lines: string[]): OutlineDraftRow[] => readOutline(lines.join('\n')).rows;
const first = (...lines: string[]) =>
  buildSyllabus(rowsFrom(...lines), NOTHING, { courseId, now: MORNING, newId });
const again = (rows: OutlineDraftRow[], before: Parameters<typeof buildSyllabus>[1]) =>
  buildSyllabus(rows, before, { courseId, now: LATER, newId });

const OCEAN = [
  '1 Waves (60 %)',
  '1.1 Swell',
  '(a) define swell',
  '(b) state its speed',
  '1.2 Surf',
  '2 Tides (40 %)',
];

describe('buildSyllabus', () => {
  it('makes topics and statements that the model takes, in the order of the rows', () => {
    const { topics, statements, dropped } = first(...OCEAN);
    expect(topics.map((t) => Topic.parse(t).title)).toEqual(['Waves', 'Swell', 'Surf', 'Tides']);
    expect(statements.map((s) => Statement.parse(s).text)).toEqual(['define swell', 'state its speed']);
    expect(topics.map((t) => t.order)).toEqual([0, 1, 4, 5]);
    expect(topics.map((t) => t.share)).toEqual([60, null, null, 40]);
    expect(topics[1]?.parentId).toBe(topics[0]?.id);
    expect(statements.every((s) => s.topicId === topics[1]?.id)).toBe(true);
    expect(dropped).toEqual([]);
  });

  it('changes nothing where nothing changed', () => {
    const before = first(...OCEAN);
    expect(again(rowsOf(before), before)).toEqual(before);
    expect(again(rowsFrom(...OCEAN), before)).toEqual(before);
  });

  it('keeps ids and moves changedAt only of what changed', () => {
    const before = first('1 Waves', '2 Tides');
    const [waves, tides] = before.topics;
    const rows = rowsOf(before).map((row) =>
      row.text === 'Tides' ? { ...row, text: 'Tides and surges' } : row,
    );
    const { topics } = again(rows, before);
    expect(topics[0]).toEqual(waves);
    expect(topics[1]).toEqual({ ...tides, title: 'Tides and surges', changedAt: LATER });
  });

  it('knows topics again by code and text, then by text, then by code', () => {
    const before = first('1 Waves', '2 Tides', '3 Ice');
    const [waves, tides, ice] = before.topics.map(({ id }) => id);
    const { topics, dropped } = again(rowsFrom('1 Tides', '2 Waves', '3 Sea ice and icebergs'), before);
    expect(topics.map(({ id }) => id)).toEqual([tides, waves, ice]);
    expect(dropped).toEqual([]);
  });

  it('tells topics of one name apart by where they stand, and takes each old one once', () => {
    const before = first('Waves', '  Theory', 'Tides', '  Theory');
    const [waves, , tides, tideTheory] = before.topics.map(({ id }) => id);
    const { topics } = again(rowsFrom('Tides', '  Theory', 'Waves', '  Theory', '  Theory'), before);
    expect(topics.slice(0, 3).map(({ id }) => id)).toEqual([tides, tideTheory, waves]);
    expect(new Set(topics.map(({ id }) => id)).size).toBe(5);
  });

  it('does not take "(a)" of one topic for "(a)" of another', () => {
    const before = first('1 Sea', '1.1 Swell', '(a) define swell', '2 Air');
    const { statements } = again(
      rowsFrom('1 Sea', '1.1 Swell', '2 Air', '2.1 Wind', '(a) define a gust'),
      before,
    );
    expect(statements.map(({ id }) => id)).not.toEqual(before.statements.map(({ id }) => id));
  });

  it('puts dropped topics off and leaves dropped statements out', () => {
    const before = first(...OCEAN);
    const swell = before.topics[1];
    const { topics, statements, dropped } = again(rowsFrom('1 Waves', '1.2 Surf', '2 Tides'), before);
    expect(topics).toHaveLength(3);
    expect(statements).toEqual([]);
    expect(dropped).toEqual([{ ...swell, off: true, dropped: true, changedAt: LATER }]);
  });

  it('takes a topic that was dropped back in, and leaves the statements of one that stays dropped alone', () => {
    const built = first(...OCEAN);
    const before = {
      ...built,
      topics: built.topics.map((t) => (t.title === 'Swell' ? { ...t, off: true, dropped: true } : t)),
    };
    const kept = again(rowsOf(before), before);
    expect(kept.dropped).toEqual([before.topics[1]]);
    expect(kept.statements).toEqual(before.statements);
    const back = again(rowsFrom(...OCEAN), before);
    expect(back.topics[1]).toEqual({ ...before.topics[1], off: false, dropped: false, changedAt: LATER });
    expect(back.statements).toEqual(before.statements);
  });

  it('keeps units, tiers and what is switched off, which is not dropped', () => {
    const before = first('1 Waves (12 marks)', '1.1 Swell (HL only)', '(a) state its speed (HL only)');
    expect(before.topics).toMatchObject([
      { share: 12, unit: 'marks', group: '' },
      { share: null, unit: 'parts', group: 'HL', off: false },
    ]);
    const rows = rowsOf(before).map((row) => (row.group === 'HL' ? { ...row, off: true } : row));
    const after = again(rows, before);
    expect(after.topics[1]).toEqual({ ...before.topics[1], off: true, changedAt: LATER });
    expect(after.statements).toMatchObject([{ id: before.statements[0]?.id, group: 'HL', off: true }]);
    expect(after.dropped).toEqual([]);
    expect(rowsOf(after)).toEqual(rows);
  });

  it('gives a row that changes its kind an id of its own', () => {
    const before = first('1 Sea', '1.1 Swell', '1.2 Surf');
    const swell = before.topics[1];
    const rows = rowsOf(before).map((row) =>
      row.text === 'Swell' ? { ...row, kind: 'statement' as const } : row,
    );
    const { statements, dropped } = again(rows, before);
    expect(statements).toMatchObject([{ text: 'Swell', createdAt: LATER }]);
    expect(statements[0]?.id).not.toBe(swell?.id);
    expect(dropped.map(({ id }) => id)).toEqual([swell?.id]);
  });

  it('drops empty rows and cuts what the model would refuse', () => {
    const row = (text: string, depth: number): OutlineDraftRow => ({
      kind: 'topic',
      depth,
      code: '',
      text,
      share: -1,
    });
    const { topics } = again(
      [row('  ', 0), row('Waves', 1), { ...row('', 1), code: '1.1' }, row('x'.repeat(900), 2)],
      NOTHING,
    );
    expect(topics.map((t) => Topic.parse(t).title.length)).toEqual([5, 3, 500]);
    expect(topics.map((t) => t.share)).toEqual([null, null, null]);
  });
});

const anyRow = fc.record(
  {
    kind: fc.constantFrom<OutlineDraftRow['kind'][]>('topic', 'statement'),
    depth: fc.integer({ min: 0, max: 5 }),
    code: fc.constantFrom('', '1', '1.1', '(a)'),
    text: fc.constantFrom('Waves', 'Tides', 'Swell', 'define swell', 'Ice'),
    share: fc.option(fc.integer({ min: 0, max: 100 })),
    group: fc.constant('HL'),
    off: fc.constant(true),
  },
  { requiredKeys: ['kind', 'depth', 'code', 'text', 'share'] },
);
/** Statements have no share of their own. */
const anyRows = fc
  .array(anyRow, { maxLength: 30 })
  .map((rows) =>
    normaliseRows(rows).map((row) => (row.kind === 'statement' ? { ...row, share: null } : row)),
  );

describe('rowsOf', () => {
  it('gives back the rows that a syllabus was made of', () => {
    fc.assert(
      fc.property(anyRows, (rows) => {
        const made = rowsOf(buildSyllabus(rows, NOTHING, { courseId, now: MORNING, newId }));
        expect(made.map(({ id: _, ...row }) => row)).toEqual(rows);
      }),
    );
  });

  it('gives back the rows after any change, with no id used twice and no topic lost', () => {
    fc.assert(
      fc.property(anyRows, anyRows, (old, rows) => {
        const before = buildSyllabus(old, NOTHING, { courseId, now: MORNING, newId });
        const after = again(rows, before);
        expect(rowsOf(after).map(({ id: _, ...row }) => row)).toEqual(rows);
        const ids = [...after.topics, ...after.dropped].map(({ id }) => id);
        expect(new Set(ids).size).toBe(ids.length);
        expect(before.topics.every(({ id }) => ids.includes(id))).toBe(true);
        expect(again(rowsOf(after), { ...after, topics: [...after.topics, ...after.dropped] })).toEqual(
          after,
        );
      }),
    );
  });
});
