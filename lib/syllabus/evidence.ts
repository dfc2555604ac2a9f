import type { Clip } from '#lib/model/clip.ts';
import type { Line, Question } from '#lib/model/item.ts';
import { isOwn } from '#lib/notes/copied.ts';
import type { Evidence } from './gaps.ts';

/** What evidence is counted from. */
export interface EvidenceInput {
  clips: readonly Clip[];
  questions: readonly Question[];
  lines: readonly Line[];
  /** Ids of questions and lines that are secured. */
  secured: ReadonlySet<string>;
  /** Ids of questions and lines that were recalled at least once. */
  attempted: ReadonlySet<string>;
}

/** The evidence of one topic while it is counted. */
export interface Tally {
  evidence: Evidence;
  /** Clips without the student's own words; a copy of the passage is none. */
  wordless: number;
  sources: Set<string>;
}

/** Counts the evidence of each topic that has any, by topic id, in one pass. A clip counts for each of its topics. */
export function tallyEvidence(input: EvidenceInput): Map<string, Tally> {
  const tallies = new Map<string, Tally>();
  for (const clip of input.clips) {
    for (const topicId of new Set(clip.topicIds)) addClip(tallyOf(tallies, topicId), clip);
  }
  const addItems = (items: readonly (Question | Line)[], kind: 'questions' | 'lines'): void => {
    for (const { id, topicId } of items) {
      const { evidence } = tallyOf(tallies, topicId);
      evidence[kind] += 1;
      if (input.attempted.has(id)) evidence.attempted += 1;
      if (input.secured.has(id)) evidence.secured += 1;
    }
  };
  addItems(input.questions, 'questions');
  addItems(input.lines, 'lines');
  return tallies;
}

/** A topic with nothing to show. */
export const emptyTally = (): Tally => ({
  evidence: {
    clips: 0,
    understood: 0,
    unclear: 0,
    sources: 0,
    questions: 0,
    lines: 0,
    lessons: 0,
    lessonsHeld: 0,
    answered: { statements: 0, explained: 0, asked: 0, unticked: 0 },
    attempted: 0,
    secured: 0,
  },
  wordless: 0,
  sources: new Set(),
});

function tallyOf(tallies: Map<string, Tally>, topicId: string): Tally {
  let tally = tallies.get(topicId);
  if (!tally) tallies.set(topicId, (tally = emptyTally()));
  return tally;
}

/** Said once for each row: rows are never changed, and coverage is reckoned again after every attempt. */
const said = new WeakMap<Clip, boolean>();

function hasOwnWords(clip: Clip): boolean {
  let isSo = said.get(clip);
  if (isSo === undefined) said.set(clip, (isSo = isOwn(clip.text, clip.ownWords)));
  return isSo;
}

function addClip(tally: Tally, clip: Clip): void {
  const hasWords = hasOwnWords(clip);
  tally.evidence.clips += 1;
  if (clip.unclear) tally.evidence.unclear += 1;
  else if (hasWords) tally.evidence.understood += 1;
  if (!hasWords) tally.wordless += 1;
  tally.sources.add(clip.sourceId);
  tally.evidence.sources = tally.sources.size;
}
