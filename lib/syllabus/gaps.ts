import type { StatementCounts } from './statement-evidence.ts';

/** What a topic has to show. Each count is of different things. */
export interface Evidence {
  clips: number;
  /** Clips with the student's own words beside them that are not marked unclear. */
  understood: number;
  /** Unclear marks: those of its clips, and its own. */
  unclear: number;
  /** Sources that its clips come from. */
  sources: number;
  questions: number;
  lines: number;
  /** Lessons, sheets and homework that it should have, as far as they were entered. */
  lessons: number;
  /** Of these, those that the student has. */
  lessonsHeld: number;
  /** What of its statements has something. */
  answered: StatementCounts;
  /** Of its questions and lines: those recalled at least once, with whatever marks. */
  attempted: number;
  /** Of its questions and lines: those secured. */
  secured: number;
}

/** What may be missing, in the order in which it is best made good, with the one thing to do about each. */
const ACTIONS = {
  'no-clip': 'find-explanation',
  'lesson-missing': 'chase-lesson',
  'not-understood': 'write-own-words',
  unclear: 'return-to-unclear',
  'one-source': 'add-second-explanation',
  'statement-unticked': 'tick-statements',
  'statement-unexplained': 'find-explanation',
  'no-question': 'write-question',
  'no-line': 'write-line',
  'statement-unasked': 'write-question',
  'not-recalled': 'run-round',
  'not-secured': 'run-round',
} as const;

export type GapKind = keyof typeof ACTIONS;

/** Every kind of gap, in the order in which they are best closed. */
export const GAP_KINDS = Object.keys(ACTIONS) as [GapKind, ...GapKind[]];

/** What is missing, and the one thing to do about it. */
export type Gap = { [K in GapKind]: { kind: K; action: (typeof ACTIONS)[K] } }[GapKind];

/** A second explanation, from another source, is wanted for each topic. */
const SOURCES_WANTED = 2;

/** The gaps of a topic, in the order in which they are best closed. `wordless` counts clips without own words. */
export function gapsOf(evidence: Evidence, wordless: number): Gap[] {
  const { clips, understood, unclear, sources, questions, lines, attempted, secured } = evidence;
  const { statements, explained, asked, unticked } = evidence.answered;
  const items = questions + lines;
  // Which statements have an explanation is known once every clip says what it explains.
  const isUnexplained = clips > 0 && explained < statements;
  const isOpen: Record<GapKind, boolean> = {
    'no-clip': clips === 0,
    'lesson-missing': evidence.lessonsHeld < evidence.lessons,
    'not-understood': understood === 0 && wordless > 0,
    unclear: unclear > 0,
    'one-source': clips > 0 && sources < SOURCES_WANTED,
    'statement-unticked': isUnexplained && unticked > 0,
    'statement-unexplained': isUnexplained && unticked === 0,
    'no-question': questions === 0,
    'no-line': lines === 0,
    'statement-unasked': items > 0 && asked < statements,
    'not-recalled': items > 0 && attempted === 0,
    'not-secured': attempted > 0 && secured < items,
  };
  return GAP_KINDS.filter((kind) => isOpen[kind]).map((kind) => ({ kind, action: ACTIONS[kind] }) as Gap);
}

/**
 * How much of the evidence is missing, from 0 (all there) to 1 (nothing there): one less the mean of six parts, each
 * from 0 to 1. They are: a clip; an understood clip (half if another is still unclear); a second source; a question
 * for each statement (one, where the topic has none); a line for each statement, likewise; and the part of its
 * questions and lines that was recalled at least once.
 */
export function missingOf(evidence: Evidence, statements: number): number {
  const { clips, understood, unclear, sources, questions, lines, attempted } = evidence;
  const wanted = Math.max(1, statements);
  const parts = [
    Math.min(1, clips),
    Math.min(1, understood) * (unclear > 0 ? 0.5 : 1),
    Math.min(1, sources / SOURCES_WANTED),
    Math.min(1, questions / wanted),
    Math.min(1, lines / wanted),
    attempted / Math.max(1, questions + lines),
  ];
  return 1 - parts.reduce((sum, part) => sum + part, 0) / parts.length;
}

/**
 * The secured part of a topic, from 0 to 1: of its questions and lines, or of its statements where these are more,
 * since nothing can be secured about a statement that nothing asks.
 */
export function securedPart({ questions, lines, secured }: Evidence, statements: number): number {
  return secured / Math.max(1, questions + lines, statements);
}
