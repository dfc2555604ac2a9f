import { DOUBLE_COMMAND_WORDS, PLAIN_COMMAND_WORDS, isCommandWord } from '../command-words.ts';
import type { RowKind } from '../outline-row.ts';

/** What the kind of a row goes by. */
export interface Judgeable {
  depth: number;
  code: string;
  text: string;
}

type Verdict = 'point' | 'perhaps' | 'title';

const OPENING =
  /^(?:(?:i|you|we|(?:all\s+)?(?:candidates?|students?|learners?|pupils?))\s+(?:can|should|must|will|need)|(?:should\s+)?be able to|can)\b/i;
/** Words that tell a verb before them: "state the", "graph a". */
const AFTER_VERB = new Set(
  'a an the and how what that why whether which when where your its their each any one two three simple'.split(
    ' ',
  ),
);
/** Words that tell a noun before them: "use of", "graphs of", "order in". */
const AFTER_NOUN = new Set('of in for by at from is are'.split(' '));
const FINITE = /\b(?:is|are|has|have|can|be|that|how|why|when|whether|including|using|should)\b/i;

/**
 * The kind of each row. A statement is a row with nothing below it that reads as an assessable point: it opens with
 * "can", "be able to" or a command word, or is a sentence two levels or more below the top of a numbered syllabus.
 * A word that may be verb or noun ("sketch") counts if the rows beside it are mostly points. Rows at the top are
 * topics, since a statement needs a topic to stand under.
 */
export function kindsOf(rows: readonly Judgeable[]): RowKind[] {
  const parents = parentsOf(rows);
  const verdicts = rows.map((row, i) => {
    const hasChildren = (rows[i + 1]?.depth ?? 0) > row.depth;
    return row.depth === 0 || hasChildren ? 'title' : verdictOn(row, rows[parents[i] ?? -1]);
  });
  const mostlyPoints = parentsOfPoints(verdicts, parents);
  return verdicts.map((verdict, i) =>
    verdict === 'point' || (verdict === 'perhaps' && mostlyPoints.has(parents[i] ?? -1))
      ? 'statement'
      : 'topic',
  );
}

function verdictOn({ depth, text }: Judgeable, parent: Judgeable | undefined): Verdict {
  const words = text.split(' ');
  if (OPENING.test(text) && words.length > 2) return 'point';
  if (depth > 1 && parent?.code && isSentence(text, words.length)) return 'point';
  const [first, second] = words.map((word) => word.toLowerCase().replace(/[^\p{L}\p{N}]/gu, ''));
  return first && second ? verdictOnVerb(first, second, words.length) : 'title';
}

function verdictOnVerb(first: string, second: string, length: number): Verdict {
  if (!isCommandWord(first) || AFTER_NOUN.has(second)) return 'title';
  if (PLAIN_COMMAND_WORDS.has(first)) return 'point';
  if (DOUBLE_COMMAND_WORDS.has(second)) return 'perhaps';
  if (AFTER_VERB.has(second) && length > 2) return second === 'and' ? 'perhaps' : 'point';
  return 'perhaps';
}

function isSentence(text: string, words: number): boolean {
  return (words >= 4 && text.endsWith('.')) || (words >= 8 && FINITE.test(text));
}

/** For each row, the place of the row it stands under; -1 at the top. */
export function parentsOf(rows: readonly { depth: number }[]): number[] {
  const latest: number[] = [];
  return rows.map(({ depth }, i) => {
    latest.length = Math.min(latest.length, depth);
    const parent = latest.findLast((place) => place !== undefined) ?? -1;
    latest[depth] = i;
    return parent;
  });
}

/** The rows among whose children points outnumber titles. */
function parentsOfPoints(verdicts: readonly Verdict[], parents: readonly number[]): Set<number> {
  const balance = new Map<number, number>();
  verdicts.forEach((verdict, i) => {
    const parent = parents[i] ?? -1;
    const weight = { point: 1, perhaps: 0, title: -1 }[verdict];
    balance.set(parent, (balance.get(parent) ?? 0) + weight);
  });
  return new Set([...balance].filter(([, sum]) => sum > 0).map(([parent]) => parent));
}
