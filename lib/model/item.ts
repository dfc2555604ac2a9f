import { z } from 'zod';
import { Id, Kept } from './basics.ts';
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
});
export type Question = z.infer<typeof Question>;

/** One line of the condensed notes: a lead that is shown and a rest that can be covered. */
export const Line = Recallable.extend({
  lead: z.string().trim().min(1).max(2000),
  rest: z.string().trim().min(1).max(20_000),
  order: z.number().int().nonnegative(),
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

export const itemOfLine = (l: Line): Item => ({
  kind: 'line',
  id: l.id,
  topicId: l.topicId,
  clipId: l.clipId,
  asks: l.lead,
  covers: l.rest,
  marks: LINE_MARKS,
});
