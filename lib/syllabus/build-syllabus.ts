import { NEW_TOPIC, type Statement, type Topic } from '#lib/model/topic.ts';
import { cutText } from './outline/cut-text.ts';
import { parentsOf } from './outline/kinds.ts';
import { matchRows } from './match-rows.ts';
import { normaliseRows } from './normalise-rows.ts';
import { LONGEST } from './outline-row.ts';
import type { OutlineDraftRow } from './outline-row.ts';
import type { Syllabus } from './rows-of.ts';
import { keptTopics } from './tree.ts';

export type { OutlineDraftRow } from './outline-row.ts';
export { rowsOf } from './rows-of.ts';

export interface BuildContext {
  courseId: string;
  /** Epoch milliseconds. */
  now: number;
  /** Makes a random id. */
  newId: () => string;
}

export interface BuiltSyllabus {
  topics: Topic[];
  /** All statements that are to be kept, also those of topics that were dropped before. */
  statements: Statement[];
  /** Topics that the rows no longer have: marked so and off, never deleted, since clips and attempts hang on them. */
  dropped: Topic[];
}

/**
 * Makes topics and statements of rows, keeping what is the same as before (see matchRows), so that clips and attempts
 * stay with their topics. `createdAt` is kept, and `changedAt` moves only where something else did. Rows without text
 * fall out; `order` is a row's place among the rows, so that statements and topics keep their places among each
 * other. Statements that the rows no longer have are left out.
 */
export function buildSyllabus(
  rows: readonly OutlineDraftRow[],
  before: Syllabus,
  ctx: BuildContext,
): BuiltSyllabus {
  const clean = normaliseRows(rows.map(tidyRow).filter((row) => row.text !== ''));
  const kept = matchRows(clean, before);
  const ids = clean.map((_, i) => kept[i]?.id ?? ctx.newId());
  const parents = parentsOf(clean);
  const built: BuiltSyllabus = { topics: [], statements: [], dropped: [] };
  clean.forEach((row, order) => {
    const parentId = ids[parents[order] ?? -1] ?? null;
    const place = { id: ids[order] ?? ctx.newId(), courseId: ctx.courseId, order, code: row.code };
    const old = kept[order];
    if (row.kind === 'topic')
      built.topics.push(touched(topicOf(row, place, parentId, old as Topic | undefined), old, ctx.now));
    else if (parentId) built.statements.push(touched(statementOf(row, place, parentId), old, ctx.now));
  });
  built.dropped = droppedOf(before.topics, built.topics, ctx.now);
  built.statements.push(...statementsDroppedBefore(before, built));
  return built;
}

type Place = Pick<Topic, 'id' | 'courseId' | 'order' | 'code'>;
type Fresh<Kept> = Omit<Kept, 'createdAt' | 'changedAt'>;

const topicOf = (
  row: OutlineDraftRow,
  place: Place,
  parentId: string | null,
  old: Topic | undefined,
): Fresh<Topic> => ({
  ...place,
  parentId,
  title: row.text,
  share: row.share,
  unit: row.share === null ? 'parts' : (row.unit ?? 'parts'),
  group: row.group ?? '',
  off: row.off ?? false,
  ...NEW_TOPIC,
  ...(old && { unclear: old.unclear, cleared: old.cleared }),
});

const statementOf = (row: OutlineDraftRow, place: Place, topicId: string): Fresh<Statement> => ({
  ...place,
  topicId,
  text: row.text,
  group: row.group ?? '',
  off: row.off ?? false,
});

/** Trims a row to what the model takes; a row that has a code only is named by it. */
function tidyRow(row: OutlineDraftRow): OutlineDraftRow {
  const code = cutText(row.code.trim(), LONGEST.code);
  const text = row.text.trim();
  const longest = row.kind === 'statement' ? LONGEST.statement : LONGEST.title;
  const share = row.share !== null && row.share >= 0 && Number.isFinite(row.share) ? row.share : null;
  const group = cutText((row.group ?? '').trim(), LONGEST.group);
  return { ...row, share, group, code: text ? code : '', text: cutText(text || code, longest) };
}

/** A fresh thing with its times: the old one itself where nothing differs. */
function touched<Kept extends Topic | Statement>(
  fresh: Fresh<Kept>,
  old: Topic | Statement | undefined,
  now: number,
): Kept {
  const kept = { ...fresh, createdAt: old?.createdAt ?? now, changedAt: old?.changedAt ?? now } as Kept;
  const keys = Object.keys(kept) as (keyof Kept)[];
  const isSame = !old || keys.every((key) => kept[key] === (old as Kept)[key]);
  return isSame ? kept : { ...kept, changedAt: now };
}

function droppedOf(before: readonly Topic[], topics: readonly Topic[], now: number): Topic[] {
  const ids = new Set(topics.map((topic) => topic.id));
  return before
    .filter((topic) => !ids.has(topic.id))
    .map((topic) => (topic.dropped ? topic : { ...topic, off: true, dropped: true, changedAt: now }));
}

/** Statements of topics that were dropped and still are: the rows never had them, so they are not left out. */
function statementsDroppedBefore(before: Syllabus, built: BuiltSyllabus): Statement[] {
  const wereThere = new Set(keptTopics(before.topics).map((topic) => topic.id));
  const stillDropped = new Set(built.dropped.map((topic) => topic.id).filter((id) => !wereThere.has(id)));
  const used = new Set(built.statements.map((statement) => statement.id));
  return before.statements.filter((s) => stillDropped.has(s.topicId) && !used.has(s.id));
}
