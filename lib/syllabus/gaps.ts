import type { StatementCounts } from './statement-evidence.ts';

/** What a topic has to show. Each count is of different things. */
export interface Evidence {
  clips: number;
  /** Clips with the student's own words beside them that are not marked unclear. */
  understood: number;
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

/** What is missing, and the one thing to do about it. */
export type Gap =
  | { kind: 'no-clip'; action: 'find-explanation' }
  | { kind: 'lesson-missing'; action: 'chase-lesson' }
  | { kind: 'not-understood'; action: 'write-own-words' }
  | { kind: 'unclear'; action: 'return-to-unclear' }
  | { kind: 'one-source'; action: 'add-second-explanation' }
  | { kind: 'statement-unticked'; action: 'tick-statements' }
  | { kind: 'statement-unexplained'; action: 'find-explanation' }
  | { kind: 'no-question'; action: 'write-question' }
  | { kind: 'no-line'; action: 'write-line' }
  | { kind: 'statement-unasked'; action: 'write-question' }
  | { kind: 'not-recalled'; action: 'run-round' }
  | { kind: 'not-secured'; action: 'run-round' };

/** A second explanation, from another source, is wanted for each topic. */
const SOURCES_WANTED = 2;

/** The gaps of a topic, in the order in which they are best closed. `wordless` counts clips without own words. */
export function gapsOf(evidence: Evidence, wordless: number): Gap[] {
  const { clips, understood, unclear, sources, questions, lines, attempted, secured } = evidence;
  const { statements, explained, asked, unticked } = evidence.answered;
  const items = questions + lines;
  // Which statements have an explanation is known once every clip says what it explains.
  const isUnexplained = clips > 0 && explained < statements;
  const gaps: [boolean, Gap][] = [
    [clips === 0, { kind: 'no-clip', action: 'find-explanation' }],
    [evidence.lessonsHeld < evidence.lessons, { kind: 'lesson-missing', action: 'chase-lesson' }],
    [understood === 0 && wordless > 0, { kind: 'not-understood', action: 'write-own-words' }],
    [unclear > 0, { kind: 'unclear', action: 'return-to-unclear' }],
    [clips > 0 && sources < SOURCES_WANTED, { kind: 'one-source', action: 'add-second-explanation' }],
    [isUnexplained && unticked > 0, { kind: 'statement-unticked', action: 'tick-statements' }],
    [isUnexplained && unticked === 0, { kind: 'statement-unexplained', action: 'find-explanation' }],
    [questions === 0, { kind: 'no-question', action: 'write-question' }],
    [lines === 0, { kind: 'no-line', action: 'write-line' }],
    [items > 0 && asked < statements, { kind: 'statement-unasked', action: 'write-question' }],
    [items > 0 && attempted === 0, { kind: 'not-recalled', action: 'run-round' }],
    [attempted > 0 && secured < items, { kind: 'not-secured', action: 'run-round' }],
  ];
  return gaps.flatMap(([isOpen, gap]) => (isOpen ? [gap] : []));
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
