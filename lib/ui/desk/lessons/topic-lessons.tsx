import type { Standing } from '../../derive/next-up.ts';
import { t } from '../../text.ts';
import { AddLesson } from './add-lesson.tsx';
import { LessonList } from './lesson-list.tsx';

/** The lessons, sheets and homework of one topic. */
export function TopicLessons({ standing: { deck }, id }: { standing: Standing; id: string }) {
  const lessons = deck.lessons.filter(({ topicId }) => topicId === id);
  const held = lessons.filter((one) => one.held).length;
  return (
    <section class="sheet stack" aria-labelledby="topic-lessons">
      <h2 id="topic-lessons">
        {t('packLessons')}{' '}
        <span class="soft">{lessons.length > 0 && t('lessonsHeld', held, lessons.length)}</span>
      </h2>
      {lessons.length > 0 && <LessonList lessons={lessons} topics={[]} />}
      <details open={lessons.length > 0}>
        <summary>{t('lessonsEnter')}</summary>
        <AddLesson courseId={deck.course.id} topicId={id} topics={[]} />
      </details>
    </section>
  );
}
