import type { Clip } from '#lib/model/clip.ts';
import type { Statement } from '#lib/model/topic.ts';

/** Clips that explain the same thing. */
export interface ReadingGroup {
  /** Null for those that answer no statement. */
  statement: Statement | null;
  /** Explanations to be read side by side: by turns from one source and another, oldest first. */
  clips: Clip[];
  /** Explanations that stand under an earlier statement already. */
  also: Clip[];
}

/** A topic's clips, statement by statement. Each clip stands under the first statement that it answers. */
export function readingGroups(clips: readonly Clip[], statements: readonly Statement[]): ReadingGroup[] {
  const placed = new Set<string>();
  const groups = statements.map((statement): ReadingGroup => {
    const answering = clips.filter(({ statementIds }) => statementIds.includes(statement.id));
    const here = answering.filter(({ id }) => !placed.has(id));
    here.forEach(({ id }) => placed.add(id));
    return { statement, clips: byTurns(here), also: answering.filter((clip) => !here.includes(clip)) };
  });
  const rest = clips.filter(({ id }) => !placed.has(id));
  return rest.length > 0 ? [...groups, { statement: null, clips: byTurns(rest), also: [] }] : groups;
}

/** In an order in which a second explanation, from another source, follows a first where there is one. */
function byTurns(clips: readonly Clip[]): Clip[] {
  const sources = [...Map.groupBy(clips, ({ sourceId }) => sourceId).values()];
  const most = Math.max(0, ...sources.map(({ length }) => length));
  const turns = Array.from({ length: most }, (_, turn) => sources.flatMap((all) => all[turn] ?? []));
  return turns.flat();
}
