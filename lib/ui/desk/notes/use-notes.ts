import { useMemo } from 'preact/hooks';
import type { Clip } from '#lib/model/clip.ts';
import type { Course } from '#lib/model/course.ts';
import type { Line, Question } from '#lib/model/item.ts';
import type { Source } from '#lib/model/source.ts';
import type { Statement, Topic } from '#lib/model/topic.ts';
import { readAll, readBy, readOne } from '#lib/store/read.ts';
import { useDeck } from '../../deck/deck-context.tsx';
import { type Live, useLive } from '../../use-live.ts';

/** What the pages on notes show of a course: all but its attempts, so that a line is written without reading those. */
export interface CourseNotes {
  course: Course;
  /** In reading order. */
  topics: Topic[];
  statements: Statement[];
  /** Oldest first. */
  clips: Clip[];
  sources: Source[];
  /** In the order of the notes. */
  lines: Line[];
  questions: Question[];
}

const byOrder = (a: { order: number }, b: { order: number }) => a.order - b.order;
const byAge = (a: { createdAt: number }, b: { createdAt: number }) => a.createdAt - b.createdAt;

/** Reads a course's notes; each kind is read again when it is written, and no other. Undefined: there is no such course. */
export function useNotes(courseId: string): Live<CourseNotes | undefined> {
  const db = useDeck();
  const syllabus = useLive(
    async () => {
      const [course, topics, statements] = await Promise.all([
        readOne(db, 'courses', courseId),
        readBy(db, 'topics', 'course', courseId),
        readBy(db, 'statements', 'course', courseId),
      ]);
      return { course, topics: topics.sort(byOrder), statements: statements.sort(byOrder) };
    },
    ['courses', 'topics', 'statements'],
    courseId,
  );
  const kept = useLive(
    async () => {
      const [clips, sources] = await Promise.all([
        readBy(db, 'clips', 'course', courseId),
        readAll(db, 'sources'),
      ]);
      return { clips: clips.sort(byAge), sources };
    },
    ['clips', 'sources'],
    courseId,
  );
  const lines = useLive(
    async () => (await readBy(db, 'lines', 'course', courseId)).sort(byOrder),
    ['lines'],
    courseId,
  );
  const questions = useLive(
    async () => (await readBy(db, 'questions', 'course', courseId)).sort(byAge),
    ['questions'],
    courseId,
  );
  return useMemo(() => {
    for (const part of [syllabus, kept, lines, questions]) if (part.state === 'failed') return part;
    if (syllabus.state !== 'ready' || kept.state !== 'ready') return { state: 'loading' };
    if (lines.state !== 'ready' || questions.state !== 'ready') return { state: 'loading' };
    const { course, ...rest } = syllabus.value;
    const value = course && {
      course,
      ...rest,
      ...kept.value,
      lines: lines.value,
      questions: questions.value,
    };
    return { state: 'ready', value };
  }, [syllabus, kept, lines, questions]);
}
