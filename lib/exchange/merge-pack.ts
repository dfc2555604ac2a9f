import type { Id, Millis } from '#lib/model/basics.ts';
import { type Course, FIRST_PRINT } from '#lib/model/course.ts';
import type { Question } from '#lib/model/item.ts';
import type { Lesson } from '#lib/model/lesson.ts';
import { NEW_TOPIC, type Statement, type Topic } from '#lib/model/topic.ts';
import type { z } from 'zod';
import {
  type CoursePack,
  type PackCourse,
  type PackLesson,
  type PackPart,
  type PackQuestion,
  type PackStatement,
  type PackTopic,
} from './course-pack.ts';
import { type FieldGroups, type MergeRowsInput, isSame, mergeFields, mergeRows } from './merge-rows.ts';
import { ordersOf } from './merge-order.ts';
import type { PackedRows } from './save-pack.ts';

/** The deck's side of a merge. */
export interface PackedDeck extends PackedRows {
  /** Ids of questions that were recalled at least once. */
  attempted: ReadonlySet<Id>;
}

/** Rows as the student knows them. */
type Named = { topics: Topic; statements: Statement; questions: Question; lessons: Lesson };

/** What taking a pack in changes, list by list. */
export type PackChanges = {
  [P in PackPart]: {
    added: Named[P][];
    changed: Named[P][];
    /** Topics: no longer asked for; what stands under them stays. The rest: taken out of the course. */
    dropped: Named[P][];
    /** Changed by the student and by the pack: the student's stays. */
    kept: Named[P][];
    /** The pack has them no longer, and they stay, since the student changed or used them. */
    staying: Named[P][];
  };
} & { course: { isChanged: boolean; isKept: boolean } };

/** Rows to write and to take out, and what to say of it. */
export interface MergedPack {
  course: Course;
  put: { topics: Topic[]; statements: Statement[]; questions: Question[]; lessons: Lesson[] };
  remove: { statements: Statement[]; questions: Question[]; lessons: Lesson[] };
  changes: PackChanges;
}

const COURSE: FieldGroups<z.infer<typeof PackCourse>> = [
  ['name'],
  ['examDay'],
  ['targetSides'],
  ['targetQuestions'],
];
const TOPIC: FieldGroups<z.infer<typeof PackTopic>> = [
  ['code'],
  ['title'],
  ['parentId'],
  ['share', 'unit'],
  ['group'],
  ['off'],
];
const STATEMENT: FieldGroups<z.infer<typeof PackStatement>> = [
  ['code', 'text'],
  ['topicId'],
  ['group'],
  ['off'],
];
const QUESTION: FieldGroups<z.infer<typeof PackQuestion>> = [
  ['prompt', 'answer', 'marks'],
  ['topicId'],
  ['statementIds'],
];
const LESSON: FieldGroups<z.infer<typeof PackLesson>> = [
  ['kind', 'title'],
  ['topicId'],
  ['wantedFrom', 'wantedBy'],
];

/**
 * What becomes of a course when a pack is taken in. Nothing of the student's goes: clips, lines and attempts are not
 * touched, what the student changed stays, and so does a question that was recalled or a lesson that is held although
 * the pack has it no longer.
 *
 * @param deck the course as it is; null where the pack brings a new one
 * @param last the pack that was taken in last; null without one
 * @param now epoch milliseconds
 */
export function mergePack(
  deck: PackedDeck | null,
  last: CoursePack | null,
  pack: CoursePack,
  now: Millis,
): MergedPack {
  const courseId = pack.course.id;
  const fresh = { courseId, createdAt: now, changedAt: now };
  const listsOf = <P extends PackPart, G>(part: P, groups: G) => ({
    ours: deck?.[part] ?? [],
    base: last?.[part] ?? [],
    theirs: pack[part],
    groups,
  });
  const topics = mergeTopics(deck?.topics ?? [], last, pack, now);
  const statements = merge<Statement, z.infer<typeof PackStatement>>(
    listsOf('statements', STATEMENT),
    fresh,
    () => true,
  );
  const questions = merge<Question, z.infer<typeof PackQuestion>>(
    listsOf('questions', QUESTION),
    { ...fresh, clipId: null, lineId: null },
    ({ id }) => !deck?.attempted.has(id),
  );
  const lessons = merge<Lesson, z.infer<typeof PackLesson>>(
    listsOf('lessons', LESSON),
    { ...fresh, held: false },
    ({ held }) => !held,
  );
  const course = mergeCourse(deck?.course, last?.course, pack.course, now);
  const ordered = inOrder(deck, pack, { topics, statements });
  return {
    course: course.row,
    put: { ...ordered, questions: putOf(questions), lessons: putOf(lessons) },
    remove: { statements: statements.dropped, questions: questions.dropped, lessons: lessons.dropped },
    changes: { topics, statements, questions, lessons, course },
  };
}

interface Stamped {
  createdAt: Millis;
  changedAt: Millis;
}

type Parted<Row> = Record<'added' | 'changed' | 'dropped' | 'kept' | 'staying', Row[]>;

const putOf = <Row>({ added, changed }: Parted<Row>): Row[] => [...added, ...changed];

function merge<Row extends Stamped & Theirs, Theirs extends { id: Id }>(
  { ours, base, theirs, groups }: MergeRowsInput<Row, Theirs>,
  fresh: Stamped & Omit<Row, keyof Theirs>,
  mayGo: (row: Row) => boolean,
): Parted<Row> {
  const merged = mergeRows<Row, Theirs>({ ours, base, theirs, groups });
  const lastById = new Map(base.map((row) => [row.id, row]));
  const goes = (row: Row): boolean =>
    mayGo(row) && groups.every((fields) => isSame<Theirs>(row, lastById.get(row.id)!, fields));
  return {
    // What the pack leaves out of a row, and what is fresh in it, make the whole.
    added: merged.added.map((row) => ({ ...row, ...fresh }) as unknown as Row),
    changed: merged.changed.map(({ after }) => ({ ...after, changedAt: fresh.changedAt })),
    dropped: merged.dropped.filter(goes),
    kept: merged.kept,
    staying: merged.dropped.filter((row) => !goes(row)),
  };
}

/** Topics are never deleted: one that the pack has no longer is marked dropped, and comes back if a later pack has it. */
function mergeTopics(
  ours: readonly Topic[],
  last: CoursePack | null,
  pack: CoursePack,
  now: Millis,
): Parted<Topic> {
  const base = last?.topics ?? [];
  const inBase = new Set(base.map(({ id }) => id));
  const isBack = ({ id, dropped }: Topic): boolean => dropped && !inBase.has(id);
  const back = new Map(ours.filter(isBack).map((topic) => [topic.id, topic]));
  const here = ours.filter((topic) => !isBack(topic));
  const merged = mergeRows({ ours: here, base, theirs: pack.topics, groups: TOPIC });
  const parted: Parted<Topic> = {
    added: merged.added.map((topic) => ({
      ...topic,
      courseId: pack.course.id,
      createdAt: back.get(topic.id)?.createdAt ?? now,
      changedAt: now,
      ...NEW_TOPIC,
      unclear: back.get(topic.id)?.unclear ?? false,
      cleared: back.get(topic.id)?.cleared ?? [],
    })),
    changed: merged.changed.map(({ after }) => ({ ...after, changedAt: now })),
    dropped: merged.dropped
      .filter(({ dropped }) => !dropped)
      .map((topic) => ({ ...topic, off: true, dropped: true, changedAt: now })),
    kept: merged.kept,
    staying: [],
  };
  return outOfDropped(ours, parted, now);
}

/** What stays in the course must not stand below what was dropped, or it would be out of sight: it moves up. */
function outOfDropped(ours: readonly Topic[], parted: Parted<Topic>, now: Millis): Parted<Topic> {
  const dropped = new Map(parted.dropped.map((topic) => [topic.id, topic]));
  const changed = new Map(parted.changed.map((topic) => [topic.id, topic]));
  for (const our of ours) {
    const topic = changed.get(our.id) ?? our;
    if (topic.dropped || dropped.has(topic.id) || !dropped.has(topic.parentId ?? '')) continue;
    let { parentId } = topic;
    const seen = new Set<Id>();
    while (parentId !== null && dropped.has(parentId) && !seen.has(parentId)) {
      seen.add(parentId);
      ({ parentId } = dropped.get(parentId)!);
    }
    if (parentId !== null && seen.has(parentId)) parentId = null;
    changed.set(topic.id, { ...topic, parentId, changedAt: now });
  }
  return { ...parted, changed: [...changed.values()] };
}

function mergeCourse(
  ours: Course | undefined,
  last: z.infer<typeof PackCourse> | undefined,
  theirs: z.infer<typeof PackCourse>,
  now: Millis,
): { row: Course; isChanged: boolean; isKept: boolean } {
  if (!ours)
    return {
      row: { ...FIRST_PRINT, ...theirs, createdAt: now, changedAt: now },
      isChanged: false,
      isKept: false,
    };
  const { row, isKept } = mergeFields(ours, last, theirs, COURSE);
  const isChanged = row !== ours;
  return { row: isChanged ? { ...row, changedAt: now } : row, isChanged, isKept };
}

/** Topics and statements to write, each with its place: that of the pack, with the student's own among them. */
function inOrder(
  deck: PackedDeck | null,
  pack: CoursePack,
  { topics, statements }: { topics: Parted<Topic>; statements: Parted<Statement> },
): Pick<MergedPack['put'], 'topics' | 'statements'> {
  const gone = new Set(statements.dropped.map(({ id }) => id));
  const order = ordersOf(
    [...(deck?.topics ?? []), ...(deck?.statements ?? []).filter(({ id }) => !gone.has(id))],
    [...pack.topics, ...pack.statements],
  );
  const placed = <Row extends Topic | Statement>(before: readonly Row[] = [], put: readonly Row[]): Row[] => {
    const changed = new Map(put.map((row) => [row.id, row]));
    const moved = before
      .filter(({ id, order: place }) => !changed.has(id) && !gone.has(id) && order.get(id) !== place)
      .map((row) => ({ ...row, order: order.get(row.id)! }));
    return [...put.map((row) => ({ ...row, order: order.get(row.id)! })), ...moved];
  };
  return {
    topics: placed(deck?.topics, [...putOf(topics), ...topics.dropped]),
    statements: placed(deck?.statements, putOf(statements)),
  };
}
