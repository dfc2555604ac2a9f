import { z } from 'zod';
import type { Attempt } from '#lib/model/attempt.ts';
import { Day, Id, Millis } from '#lib/model/basics.ts';
import type { Course } from '#lib/model/course.ts';
import type { Topic } from '#lib/model/topic.ts';
import { GAP_KINDS, type TopicCoverage } from '#lib/syllabus/coverage.ts';
import type { Stake } from '#lib/syllabus/stakes.ts';

export const REPORT_FORMAT = 'plumbline-progress-report';
export const REPORT_VERSION = 1;

const Part = z.number().min(0).max(1);
const Count = z.number().int().nonnegative();

const ReportTopic = z.object({
  id: Id,
  code: z.string(),
  title: z.string(),
  /** Its part of the exam. */
  share: Part,
  securedPart: Part,
  /** Every question and line in it is secured, and there is one. */
  isSecured: z.boolean(),
  /** Marks at the latest recall of each of its questions and lines; null before any. */
  marks: z.object({ got: z.number().nonnegative(), outOf: Count }).nullable(),
  lessons: z.object({ held: Count, wanted: Count }),
  statements: z.object({ explained: Count, all: Count }),
  items: z.object({ written: Count, recalled: Count, secured: Count }),
  gaps: z.array(z.enum(GAP_KINDS)),
});

/** How a student stands in a course, to be handed to a teacher: numbers and names of topics, and no text of clips. */
export const ProgressReport = z.object({
  format: z.literal(REPORT_FORMAT),
  version: z.literal(REPORT_VERSION),
  madeAt: Millis,
  /** What the student wrote for a name; empty where nothing. */
  student: z.string().max(200),
  course: z.object({ id: Id, name: z.string(), examDay: Day.nullable() }),
  /** The part of the exam that is secured, with its limits at 95 %. */
  secured: z.object({ part: Part, low: Part, high: Part }),
  questions: z.object({ written: Count, target: Count }),
  /** The leaf topics that count, in reading order. */
  topics: z.array(ReportTopic),
});
export type ProgressReport = z.infer<typeof ProgressReport>;

interface ReportInput {
  course: Course;
  topics: readonly Topic[];
  coverage: readonly TopicCoverage[];
  secured: Stake;
  attempts: readonly Attempt[];
  /** Ids of the questions and lines that are still there. */
  items: ReadonlySet<string>;
  questions: number;
  student: string;
  /** Epoch milliseconds. */
  now: number;
}

/** Makes the report of a course. */
export function progressReport(input: ReportInput): ProgressReport {
  const { course, secured, now } = input;
  const rows = new Map(input.coverage.map((row) => [row.topicId, row]));
  const marks = latestMarks(input.attempts, input.items);
  const topics = input.topics
    .toSorted((a, b) => a.order - b.order)
    .flatMap((topic) => {
      const row = rows.get(topic.id);
      return row ? [reportTopic(topic, row, marks.get(topic.id) ?? null)] : [];
    });
  return {
    format: REPORT_FORMAT,
    version: REPORT_VERSION,
    madeAt: now,
    student: input.student.trim().slice(0, 200),
    course: { id: course.id, name: course.name, examDay: course.examDay },
    secured: { part: secured.part, low: secured.low, high: secured.high },
    questions: { written: input.questions, target: course.targetQuestions },
    topics,
  };
}

type Marks = NonNullable<z.infer<typeof ReportTopic>['marks']>;

function reportTopic(
  { id, code, title }: Topic,
  { share, securedPart, evidence, gaps }: TopicCoverage,
  marks: Marks | null,
): z.infer<typeof ReportTopic> {
  const written = evidence.questions + evidence.lines;
  return {
    id,
    code,
    title,
    share,
    securedPart,
    isSecured: written > 0 && evidence.secured === written,
    marks,
    lessons: { held: evidence.lessonsHeld, wanted: evidence.lessons },
    statements: { explained: evidence.answered.explained, all: evidence.answered.statements },
    items: { written, recalled: evidence.attempted, secured: evidence.secured },
    gaps: gaps.map(({ kind }) => kind),
  };
}

/** Marks by topic, each item counted as it went the last time. */
function latestMarks(attempts: readonly Attempt[], items: ReadonlySet<string>): Map<string, Marks> {
  const latest = new Map<string, Attempt>();
  for (const attempt of attempts) {
    const before = latest.get(attempt.itemId);
    if (items.has(attempt.itemId) && (!before || attempt.at >= before.at))
      latest.set(attempt.itemId, attempt);
  }
  const marks = new Map<string, Marks>();
  for (const { topicId, marks: got, outOf } of latest.values()) {
    const before = marks.get(topicId) ?? { got: 0, outOf: 0 };
    marks.set(topicId, { got: before.got + got, outOf: before.outOf + outOf });
  }
  return marks;
}
