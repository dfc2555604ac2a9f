import type { Clip } from '#lib/model/clip.ts';
import type { Line, Question } from '#lib/model/item.ts';
import type { Statement } from '#lib/model/topic.ts';
import type { EvidenceInput } from './evidence.ts';

/** What answers one statement: counts of clips, and of questions and lines. */
export interface StatementEvidence {
  /** Clips that explain it. */
  clips: number;
  /** Of these, clips with the student's own words that are not marked unclear. */
  understood: number;
  /** Questions and lines that ask it. */
  items: number;
  /** Of these, recalled at least once. */
  attempted: number;
  /** Of these, secured. */
  secured: number;
}

/** Of one topic's statements that count: how many there are, and how many have something. */
export interface StatementCounts {
  statements: number;
  explained: number;
  asked: number;
  /** Clips of the topic that say of none of its statements that they explain it. */
  unticked: number;
}

/**
 * The evidence of each statement that counts, by its id. What the student ticked counts while it stands under the
 * statement's own topic: moved elsewhere, a clip or question answers what is asked there. Takes one pass.
 */
export function statementEvidence(
  statements: readonly Statement[],
  { clips, questions, lines, attempted, secured }: EvidenceInput,
): Map<string, StatementEvidence> {
  const topicOf = new Map<string, string>();
  const found = new Map<string, StatementEvidence>();
  for (const { id, topicId, off } of statements) {
    if (off) continue;
    topicOf.set(id, topicId);
    found.set(id, { clips: 0, understood: 0, items: 0, attempted: 0, secured: 0 });
  }
  for (const clip of clips) {
    const isUnderstood = !clip.unclear && clip.ownWords.trim() !== '';
    for (const id of once(clip.statementIds)) {
      if (!clip.topicIds.includes(topicOf.get(id) ?? '')) continue;
      const evidence = found.get(id)!;
      evidence.clips += 1;
      if (isUnderstood) evidence.understood += 1;
    }
  }
  const addItem = (item: Question | Line): void => {
    for (const id of once(item.statementIds)) {
      if (topicOf.get(id) !== item.topicId) continue;
      const evidence = found.get(id)!;
      evidence.items += 1;
      if (attempted.has(item.id)) evidence.attempted += 1;
      if (secured.has(item.id)) evidence.secured += 1;
    }
  };
  questions.forEach(addItem);
  lines.forEach(addItem);
  return found;
}

/** Each id once. Most things answer one statement or none, and there are many things. */
const once = (ids: readonly string[]): Iterable<string> => (ids.length < 2 ? ids : new Set(ids));

/** How many statements of each topic have something, by topic id; topics without statements are not in it. */
export function statementCounts(
  statements: readonly Statement[],
  evidence: ReadonlyMap<string, StatementEvidence>,
  clips: readonly Clip[],
): Map<string, StatementCounts> {
  const counts = new Map<string, StatementCounts>();
  const topicOf = new Map<string, string>();
  for (const { id, topicId } of statements) {
    const one = evidence.get(id);
    if (!one) continue;
    topicOf.set(id, topicId);
    let count = counts.get(topicId);
    if (!count) counts.set(topicId, (count = { statements: 0, explained: 0, asked: 0, unticked: 0 }));
    count.statements += 1;
    if (one.clips > 0) count.explained += 1;
    if (one.items > 0) count.asked += 1;
  }
  for (const { topicIds, statementIds } of clips) {
    for (const topicId of once(topicIds)) {
      const count = counts.get(topicId);
      if (count && !statementIds.some((id) => topicOf.get(id) === topicId)) count.unticked += 1;
    }
  }
  return counts;
}
