import { useMemo } from 'preact/hooks';
import { toChase } from '#lib/syllabus/chase.ts';
import { activeTopics } from '#lib/syllabus/tree.ts';
import { dayOf } from '../../derive/days.ts';
import type { Standing } from '../../derive/next-up.ts';
import { topicName, topicNames } from '../../parts/topic-name.ts';
import { t } from '../../text.ts';
import { linkTo } from '../route.ts';
import { AddLesson } from './add-lesson.tsx';
import { ChaseList } from './chase-list.tsx';
import { LessonList } from './lesson-list.tsx';

/** The lessons, sheets and homework that each topic should have; what is missing, to be chased. */
export function LessonsView({ standing: { deck } }: { standing: Standing }) {
  const topics = useMemo(() => activeTopics(deck.topics), [deck.topics]);
  const names = useMemo(() => topicNames(deck.topics), [deck.topics]);
  const places = useMemo(() => new Map(topics.map(({ id }, place) => [id, place])), [topics]);
  const byTopic = Map.groupBy(deck.lessons, ({ topicId }) => topicId);
  if (topics.length === 0)
    return (
      <div class="stack">
        <h1>{t('pageLessons')}</h1>
        <p>
          {t('coverageNoSyllabus')} <a href={linkTo('syllabus')}>{t('syllabusBring')}</a>
        </p>
      </div>
    );
  return (
    <div class="stack">
      <h1>{t('pageLessons')}</h1>
      <p>{t('lessonsHow')}</p>
      <section class="sheet stack" aria-labelledby="lessons-add">
        <h2 id="lessons-add">{t('lessonsEnter')}</h2>
        <AddLesson courseId={deck.course.id} topicId={null} topics={topics} />
      </section>
      <section class="sheet stack" aria-labelledby="lessons-chase">
        <h2 id="lessons-chase">{t('chaseTitle')}</h2>
        <ChaseList missing={toChase(deck.lessons, places, dayOf(Date.now()))} topicNameOf={names} />
      </section>
      <section class="sheet stack" aria-labelledby="lessons-all">
        <h2 id="lessons-all">{t('lessonsAll')}</h2>
        {deck.lessons.length === 0 && <p class="soft">{t('lessonsNone')}</p>}
        {topics
          .filter(({ id }) => byTopic.has(id))
          .map((topic) => {
            const lessons = byTopic.get(topic.id)!;
            const held = lessons.filter((one) => one.held).length;
            return (
              <section key={topic.id} class="stack" aria-label={topicName(topic)}>
                <h3>
                  <a href={linkTo(`topic/${topic.id}`)}>{topicName(topic)}</a>{' '}
                  <span class="soft">{t('lessonsHeld', held, lessons.length)}</span>
                </h3>
                <LessonList lessons={lessons} topics={topics} />
              </section>
            );
          })}
      </section>
    </div>
  );
}
