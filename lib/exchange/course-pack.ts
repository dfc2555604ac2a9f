import { z } from 'zod';
import { Id, Millis } from '#lib/model/basics.ts';
import { Course } from '#lib/model/course.ts';
import { Question } from '#lib/model/item.ts';
import { Lesson } from '#lib/model/lesson.ts';
import { StudentError } from '#lib/model/student-error.ts';
import { Statement, Topic } from '#lib/model/topic.ts';

/** What tells a course pack from any other JSON. */
export const PACK_FORMAT = 'plumbline-course-pack';

/**
 * The version of the format. It grows only when an older Plumbline could misread a pack; a part that is merely added
 * (another list beside these) leaves it as it is, and is handed on by a Plumbline that does not know it.
 */
export const PACK_VERSION = 1;

/** The heaviest file that is read as a course pack, in bytes: some fifty times a large course. */
export const HEAVIEST_PACK = 20_000_000;

export const PackCourse = Course.pick({
  id: true,
  name: true,
  examDay: true,
  targetSides: true,
  targetQuestions: true,
});
export const PackTopic = Topic.pick({
  id: true,
  parentId: true,
  order: true,
  code: true,
  title: true,
  share: true,
  unit: true,
  group: true,
  off: true,
});
export const PackStatement = Statement.pick({
  id: true,
  topicId: true,
  order: true,
  code: true,
  text: true,
  group: true,
  off: true,
});
export const PackQuestion = Question.pick({
  id: true,
  topicId: true,
  prompt: true,
  answer: true,
  marks: true,
  statementIds: true,
});
export const PackLesson = Lesson.pick({
  id: true,
  topicId: true,
  kind: true,
  title: true,
  wantedFrom: true,
  wantedBy: true,
});

/** Syllabuses have about six levels. A tree without end would break every screen that walks down it. */
const MOST_LEVELS = 30;

/** A course as a teacher hands it to a class. Ids stay the same from one pack of a course to the next. */
export const CoursePack = z
  .looseObject({
    format: z.literal(PACK_FORMAT),
    version: z.number().int().min(1),
    savedAt: Millis,
    course: PackCourse,
    topics: z.array(PackTopic).min(1).max(5000),
    statements: z.array(PackStatement).max(20_000),
    questions: z.array(PackQuestion).max(20_000),
    lessons: z.array(PackLesson).max(20_000),
  })
  .superRefine((pack, ctx) => {
    const ids = new Set<Id>();
    for (const part of PARTS)
      pack[part].forEach(({ id }, i) => {
        if (ids.has(id)) ctx.addIssue({ code: 'custom', path: [part, i, 'id'], message: 'twice' });
        ids.add(id);
      });
    const topics = new Set(pack.topics.map(({ id }) => id));
    for (const part of ['statements', 'questions', 'lessons'] as const)
      pack[part].forEach(({ topicId }, i) => {
        if (!topics.has(topicId))
          ctx.addIssue({ code: 'custom', path: [part, i, 'topicId'], message: 'no such topic' });
      });
    const parents = new Map(pack.topics.map(({ id, parentId }) => [id, parentId]));
    pack.topics.forEach(({ parentId }, i) => {
      const message = wayUp(parentId, parents);
      if (message) ctx.addIssue({ code: 'custom', path: ['topics', i, 'parentId'], message });
    });
  });
export type CoursePack = z.infer<typeof CoursePack>;

/** What is wrong with the way from a topic to the top; nothing where it ends there. */
function wayUp(parentId: Id | null, parents: ReadonlyMap<Id, Id | null>): string | null {
  let at: Id | null | undefined = parentId;
  for (let level = 1; level < MOST_LEVELS; level++) {
    if (at === null) return null;
    at = parents.get(at);
    if (at === undefined) return 'no such topic';
  }
  return 'no way to the top';
}

/** The lists of a pack that are merged by id. */
export const PARTS = ['topics', 'statements', 'questions', 'lessons'] as const;
export type PackPart = (typeof PARTS)[number];

const KNOWN = new Set(['format', 'version', 'savedAt', 'course', ...PARTS]);

/** The parts of a pack that this version does not know: they are handed on as they are. */
export const unknownParts = (pack: CoursePack): Record<string, unknown> =>
  Object.fromEntries(Object.entries(pack).filter(([name]) => !KNOWN.has(name)));

const Head = z.looseObject({ format: z.literal(PACK_FORMAT), version: z.number() });

/**
 * Reads the text of a file as a course pack.
 * Errors: StudentError `errorPackDamaged` where the text ends early or is no JSON though it began as a pack,
 * `errorPackNone` where it is something else, `errorPackNewer` for a later version of the format, `errorPackWrong`
 * naming the first place that does not fit.
 */
export function readPack(text: string): CoursePack {
  let value: unknown;
  try {
    // A key of this name would reach for what every object inherits from.
    value = JSON.parse(text, (key, part: unknown) => (key === '__proto__' ? undefined : part));
  } catch {
    throw new StudentError(text.includes(`"${PACK_FORMAT}"`) ? 'errorPackDamaged' : 'errorPackNone');
  }
  const head = Head.safeParse(value);
  if (!head.success) throw new StudentError('errorPackNone');
  if (head.data.version > PACK_VERSION) throw new StudentError('errorPackNewer');
  const pack = CoursePack.safeParse(value);
  if (pack.success) return pack.data;
  const { path, message } = pack.error.issues[0]!;
  throw new StudentError('errorPackWrong', path.join('.'), message);
}
