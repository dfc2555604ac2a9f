import { Course, FIRST_PRINT, FIRST_TARGETS } from '#lib/model/course.ts';
import { FIRST_SETTINGS, SETTINGS_KEY, Settings } from '#lib/model/settings.ts';
import type { Statement, Topic } from '#lib/model/topic.ts';
import { StudentError } from '#lib/model/student-error.ts';
import type { Db } from '../schema.ts';
import { readOne } from '../read.ts';
import { checked, write } from '../write.ts';

/** The student's settings, or the first ones where none can be read. */
export async function readSettings(db: Db): Promise<Settings> {
  return (await readOne(db, 'settings', SETTINGS_KEY)) ?? FIRST_SETTINGS;
}

/** Changes some of the settings. */
export async function changeSettings(db: Db, change: Partial<Settings>): Promise<void> {
  await write(db, ['settings'], async (transaction) => {
    const store = transaction.objectStore('settings');
    const settings = Settings.safeParse(await store.get(SETTINGS_KEY)).data ?? FIRST_SETTINGS;
    await store.put(checked('settings', { ...settings, ...change }), SETTINGS_KEY);
  });
}

/** Starts a course and makes it the current one. */
export async function startCourse(
  db: Db,
  draft: Pick<Course, 'name' | 'examDay'>,
  at: number,
): Promise<Course> {
  const course = checked('courses', {
    id: crypto.randomUUID(),
    createdAt: at,
    changedAt: at,
    ...FIRST_TARGETS,
    ...FIRST_PRINT,
    ...draft,
  });
  const settings = await readSettings(db);
  await write(db, ['courses', 'settings'], async (transaction) => {
    await transaction.objectStore('courses').add(course);
    await transaction
      .objectStore('settings')
      .put({ ...settings, courseId: course.id, aimedTopicId: null }, SETTINGS_KEY);
  });
  return course;
}

/** Changes what a course is called, its exam day or what it aims at. What gains most depends on the day, so that cache goes. */
export async function changeCourse(
  db: Db,
  id: string,
  change: Partial<Pick<Course, 'name' | 'examDay' | 'targetSides' | 'targetQuestions' | 'paper' | 'columns'>>,
  at: number,
): Promise<void> {
  await write(db, ['courses', 'nextUp'], async (transaction) => {
    const course = Course.safeParse(await transaction.objectStore('courses').get(id));
    if (!course.success) throw new StudentError('errorCourseGone');
    await transaction
      .objectStore('courses')
      .put(checked('courses', { ...course.data, ...change, changedAt: at }));
    await transaction.objectStore('nextUp').delete(id);
  });
}

/** Saves a whole syllabus: the topics and statements of a course become these. Topics are never deleted, only dropped. */
export async function saveSyllabus(
  db: Db,
  courseId: string,
  syllabus: { topics: Topic[]; statements: Statement[] },
): Promise<void> {
  await write(db, ['topics', 'statements', 'nextUp'], async (transaction) => {
    const topics = transaction.objectStore('topics');
    const statements = transaction.objectStore('statements');
    for (const topic of syllabus.topics) await topics.put(checked('topics', topic));
    const kept = new Set(syllabus.statements.map((statement) => statement.id));
    for (const key of await statements.index('course').getAllKeys(courseId))
      if (!kept.has(key)) await statements.delete(key);
    for (const statement of syllabus.statements) await statements.put(checked('statements', statement));
    await transaction.objectStore('nextUp').delete(courseId);
  });
}
