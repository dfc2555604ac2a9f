import type { Statement, Topic } from '#lib/model/topic.ts';
import type { BuiltSyllabus } from './build-syllabus.ts';
import type { Syllabus } from './rows-of.ts';
import { keptTopics } from './tree.ts';

/** What a newer version of a syllabus brings. Each list is in reading order. */
export interface SyllabusChanges {
  added: Topic[];
  /** There before, and in the newer version no longer. */
  dropped: Topic[];
  /** The same topics under another title or code. */
  renamed: { before: Topic; after: Topic }[];
  /** The same topics, and not renamed, under another topic than before. */
  moved: { before: Topic; after: Topic }[];
  statements: { added: Statement[]; dropped: Statement[]; reworded: number };
}

/**
 * What saving would change: `built` as buildSyllabus makes it of the newer version, `before` as it is kept. A topic
 * that was dropped before and comes back counts as added.
 */
export function compareSyllabus(before: Syllabus, built: BuiltSyllabus): SyllabusChanges {
  const old = new Map(keptTopics(before.topics).map((topic) => [topic.id, topic]));
  const same = built.topics.flatMap((after) => {
    const was = old.get(after.id);
    return was ? [{ before: was, after }] : [];
  });
  const isRenamed = ({ before: was, after }: { before: Topic; after: Topic }): boolean =>
    was.title !== after.title || was.code !== after.code;
  return {
    added: built.topics.filter(({ id }) => !old.has(id)),
    dropped: built.dropped.filter(({ id }) => old.has(id)),
    renamed: same.filter(isRenamed),
    moved: same.filter((pair) => !isRenamed(pair) && pair.before.parentId !== pair.after.parentId),
    statements: compareStatements(before.statements, built.statements),
  };
}

function compareStatements(
  before: readonly Statement[],
  after: readonly Statement[],
): SyllabusChanges['statements'] {
  const old = new Map(before.map((statement) => [statement.id, statement]));
  const now = new Set(after.map(({ id }) => id));
  return {
    added: after.filter(({ id }) => !old.has(id)),
    dropped: before.filter(({ id }) => !now.has(id)),
    reworded: after.filter(({ id, text, code }) => {
      const was = old.get(id);
      return was !== undefined && (was.text !== text || was.code !== code);
    }).length,
  };
}

/** Whether nothing would change but what the student sees at once: no topic and no statement comes, goes or is renamed. */
export const isUnchanged = ({ added, dropped, renamed, moved, statements }: SyllabusChanges): boolean =>
  [added, dropped, renamed, moved, statements.added, statements.dropped].every(
    ({ length }) => length === 0,
  ) && statements.reworded === 0;
