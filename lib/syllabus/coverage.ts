import type { Lesson } from '#lib/model/lesson.ts';
import type { Statement, Topic } from '#lib/model/topic.ts';
import { emptyTally, tallyEvidence } from './evidence.ts';
import type { EvidenceInput, Tally } from './evidence.ts';
import { gapsOf, missingOf, securedPart } from './gaps.ts';
import type { Evidence, Gap } from './gaps.ts';
import { type StatementCounts, statementCounts, statementEvidence } from './statement-evidence.ts';
import { activeTopics, examShares } from './tree.ts';

export { GAP_KINDS } from './gaps.ts';
export type { Evidence, Gap } from './gaps.ts';

export interface CoverageInput extends EvidenceInput {
  topics: readonly Topic[];
  statements: readonly Statement[];
  lessons: readonly Lesson[];
}

/** What one leaf topic has to show, and what it lacks. */
export interface TopicCoverage {
  topicId: string;
  /** Its part of the exam, 0 to 1 (see examShares). */
  share: number;
  evidence: Evidence;
  /** How many things can be asked in it: its questions and lines, or its statements where these are more. */
  asked: number;
  /** See securedPart in gaps.ts. */
  securedPart: number;
  /** In the order in which they are best closed; empty where nothing is missing. */
  gaps: Gap[];
  /** How much of the evidence is missing, 0 to 1 (see missingOf). */
  missing: number;
  /** The part of the exam that is not secured: the share times one less its secured part (see securedPart). */
  atStake: number;
}

/** How many leaf topics have each kind of evidence. */
export interface CoveredCounts {
  /** A clip. */
  gathered: number;
  /** A clip in own words, and none unclear. */
  understood: number;
  /** Clips from two sources or more. */
  secondSource: number;
  questioned: number;
  condensed: number;
  /** Every question and line recalled at least once. */
  recalled: number;
  /** Every question and line secured. */
  secured: number;
  /** No gap but what is still to be secured. */
  complete: number;
}

export interface Coverage {
  /** The leaf topics that count, worst first: by what is at stake times what is missing, then in reading order. */
  topics: TopicCoverage[];
  covered: CoveredCounts;
  /** How many leaf topics count. */
  total: number;
  /**
   * Topics that have others below them and evidence of their own, in reading order. It counts for no leaf, since it
   * does not say which one it covers: it is listed so that the student can tag it closer.
   */
  above: { topicId: string; evidence: Evidence }[];
}

/**
 * What evidence each topic has, the gaps, and what is at stake. Topics that are off, and all below them, are left
 * out with their evidence. Takes one pass over the clips, questions and lines.
 */
export function coverageOf(input: CoverageInput): Coverage {
  const tallies = tallyEvidence(input);
  const shares = examShares(input.topics);
  const answered = statementCounts(input.statements, statementEvidence(input.statements, input), input.clips);
  const lessons = lessonsByTopic(input.lessons);
  const active = activeTopics(input.topics);
  const topics = active.flatMap(({ id, unclear }) => {
    const share = shares.get(id);
    return share === undefined
      ? []
      : [
          topicCoverage(id, share, tallies.get(id), {
            ...lessons.get(id),
            answered: answered.get(id),
            isUnclear: unclear,
          }),
        ];
  });
  const above = active.flatMap(({ id }) => {
    const tally = shares.has(id) ? undefined : tallies.get(id);
    return tally ? [{ topicId: id, evidence: tally.evidence }] : [];
  });
  const covered = coveredCounts(topics);
  topics.sort((a, b) => b.atStake * b.missing - a.atStake * a.missing);
  return { topics, covered, total: topics.length, above };
}

function topicCoverage(
  topicId: string,
  share: number,
  tally: Tally | undefined,
  {
    answered,
    isUnclear,
    ...held
  }: { answered: StatementCounts | undefined; isUnclear: boolean } & Partial<
    Pick<Evidence, 'lessons' | 'lessonsHeld'>
  >,
): TopicCoverage {
  const { evidence: counted, wordless } = tally ?? emptyTally();
  const unclear = counted.unclear + Number(isUnclear);
  const evidence = { ...counted, ...held, unclear, answered: answered ?? counted.answered };
  const { statements } = evidence.answered;
  const secured = securedPart(evidence, statements);
  return {
    topicId,
    share,
    evidence,
    asked: Math.max(evidence.questions + evidence.lines, statements),
    securedPart: secured,
    gaps: gapsOf(evidence, wordless),
    missing: missingOf(evidence, statements),
    atStake: share * (1 - secured),
  };
}

function lessonsByTopic(lessons: readonly Lesson[]): Map<string, Pick<Evidence, 'lessons' | 'lessonsHeld'>> {
  const counts = new Map<string, Pick<Evidence, 'lessons' | 'lessonsHeld'>>();
  for (const { topicId, held } of lessons) {
    const before = counts.get(topicId) ?? { lessons: 0, lessonsHeld: 0 };
    counts.set(topicId, {
      lessons: before.lessons + 1,
      lessonsHeld: before.lessonsHeld + Number(held),
    });
  }
  return counts;
}

function coveredCounts(topics: readonly TopicCoverage[]): CoveredCounts {
  const count = (has: (evidence: Evidence, topic: TopicCoverage) => boolean): number =>
    topics.filter((topic) => has(topic.evidence, topic)).length;
  const items = ({ questions, lines }: Evidence): number => questions + lines;
  return {
    gathered: count((e) => e.clips > 0),
    understood: count((e) => e.understood > 0 && e.unclear === 0),
    secondSource: count((e) => e.sources > 1),
    questioned: count((e) => e.questions > 0),
    condensed: count((e) => e.lines > 0),
    recalled: count((e) => items(e) > 0 && e.attempted === items(e)),
    secured: count((e) => items(e) > 0 && e.secured === items(e)),
    complete: count((_, { gaps }) => gaps.every(({ kind }) => kind === 'not-secured')),
  };
}
