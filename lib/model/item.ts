import { z } from 'zod';
import { Id, Kept } from './basics.ts';
import { LeftOut } from './left-out.ts';
import { StatementIds } from './topic.ts';

/** What every recallable thing has in common. */
const Recallable = Kept.extend({
  courseId: Id,
  topicId: Id,
  /** The clip it was written from; null when written from nothing. */
  clipId: Id.nullable(),
  /** What it asks. */
  statementIds: StatementIds,
});

/** A short question with its answer. */
export const Question = Recallable.extend({
  prompt: z.string().trim().min(1).max(4000),
  answer: z.string().trim().min(1).max(20_000),
  marks: z.number().int().min(1).max(20),
  /** The note line that it stands beside; null where it stands alone. */
  lineId: Id.nullable(),
});
export type Question = z.infer<typeof Question>;

/** The longest lead, and the longest rest, in UTF-16 units. */
export const LONGEST_LINE = 20_000;

/** How far lines can be moved in below one another. */
export const DEEPEST_LINE = 5;

/**
 * One line of the condensed notes: a lead that is shown and a rest that can be covered. A line without a rest heads the
 * lines below it or says something that need not be recalled; one without either has just been begun.
 */
export const Line = Recallable.extend({
  lead: z.string().trim().max(LONGEST_LINE),
  rest: z.string().trim().max(LONGEST_LINE),
  /** Its place among the lines of its course: a line may come between any two others. */
  order: z.number(),
  /** How far it is moved in: 0 at the margin. */
  depth: z.number().int().min(0).max(DEEPEST_LINE),
  leftOut: LeftOut,
  /** Diagrams that stand below it. */
  pictureIds: z.array(Id).max(10),
});
export type Line = z.infer<typeof Line>;

export const ItemKind = z.enum(['question', 'line']);
export type ItemKind = z.infer<typeof ItemKind>;

/** Anything a round can ask: one shape for questions and lines. */
export interface Item {
  kind: ItemKind;
  id: Id;
  topicId: Id;
  clipId: Id | null;
  /** What is shown. */
  asks: string;
  /** What is covered until the student has answered. */
  covers: string;
  marks: number;
}

/** A line counts one mark: it holds one thing. */
export const LINE_MARKS = 1;

export const itemOfQuestion = (q: Question): Item => ({
  kind: 'question',
  id: q.id,
  topicId: q.topicId,
  clipId: q.clipId,
  asks: q.prompt,
  covers: q.answer,
  marks: q.marks,
});

/** What nobody has said of a line when it is begun. */
export const NEW_LINE: Pick<Line, 'statementIds' | 'depth' | 'leftOut' | 'pictureIds'> = {
  statementIds: [],
  depth: 0,
  leftOut: null,
  pictureIds: [],
};

/** Whether a round can ask a line: it is in the notes, with something to show and something to cover. */
export const isAsked = ({ lead, rest, leftOut }: Pick<Line, 'lead' | 'rest' | 'leftOut'>): boolean =>
  lead !== '' && rest !== '' && leftOut === null;

export const itemOfLine = (l: Line): Item => ({
  kind: 'line',
  id: l.id,
  topicId: l.topicId,
  clipId: l.clipId,
  asks: l.lead,
  covers: l.rest,
  marks: LINE_MARKS,
});
