import { useMemo } from 'preact/hooks';
import type { Course } from '#lib/model/course.ts';
import type { Source } from '#lib/model/source.ts';
import type { Topic } from '#lib/model/topic.ts';
import type { SearchDocument } from '#lib/notes/search/document.ts';
import { readAll } from '#lib/store/read.ts';
import { useDeck } from '../deck/deck-context.tsx';
import { topicNames } from '../parts/topic-name.ts';
import { t } from '../text.ts';
import { useLive } from '../use-live.ts';

/** What documents stand under, and where they are from, by name. */
export interface Names {
  courses: Course[];
  /** Of all courses, each in reading order. */
  topics: Topic[];
  sources: Source[];
  /** Where a document belongs, in one line. */
  about(document: SearchDocument, isEveryCourse: boolean): string;
}

export const sourceName = ({ title, site, url }: Source): string => title || site || url;

export function useNames(): Names | null {
  const db = useDeck();
  const live = useLive(
    async () => {
      const [courses, topics, sources] = await Promise.all([
        readAll(db, 'courses'),
        readAll(db, 'topics'),
        readAll(db, 'sources'),
      ]);
      topics.sort((a, b) => a.order - b.order);
      return { courses, topics, sources };
    },
    ['courses', 'topics', 'sources'],
    'names',
  );
  const value = live.state === 'ready' ? live.value : null;
  return useMemo(() => value && { ...value, about: aboutBy(value) }, [value]);
}

function aboutBy({ courses, topics, sources }: Omit<Names, 'about'>): Names['about'] {
  const topicName = topicNames(topics);
  const sourceOf = new Map(sources.map((source) => [source.id, source]));
  const courseName = new Map(courses.map(({ id, name }) => [id, name]));
  return (document, isEveryCourse) => {
    const source = sourceOf.get(document.sourceId ?? '');
    return [
      isEveryCourse ? courseName.get(document.courseId) : '',
      document.topicIds.map(topicName).join(', ') || t('clipUntagged'),
      source ? sourceName(source) : '',
      document.unclear ? t('unclear') : '',
    ]
      .filter(Boolean)
      .join(' · ');
  };
}
