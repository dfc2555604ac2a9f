import type { Clip } from '#lib/model/clip.ts';
import type { Source } from '#lib/model/source.ts';
import { FIRST_SETTINGS } from '#lib/model/settings.ts';
import { aClip, aCourse, aTopic, newId, MORNING } from '../builders.ts';
import type { Rows } from './render-in-deck.tsx';

export const course = aCourse({ examDay: null });
const inCourse = { courseId: course.id };

export const waves = aTopic({ ...inCourse, order: 0, code: '1', title: 'Waves at sea' });
export const deep = aTopic({
  ...inCourse,
  parentId: waves.id,
  order: 1,
  code: '1.1',
  title: 'Deep water',
  share: 60,
});
export const shallow = aTopic({
  ...inCourse,
  parentId: waves.id,
  order: 2,
  code: '1.2',
  title: 'Shallow water',
  share: 40,
});
export const tides = aTopic({ ...inCourse, order: 3, code: '2', title: 'Tides' });

export const aSource = (over: Partial<Source> = {}): Source => ({
  id: newId(),
  createdAt: MORNING,
  changedAt: MORNING,
  kind: 'page',
  url: 'http://127.0.0.1/waves',
  title: 'How waves travel',
  site: 'The Lagoonery',
  author: '',
  published: '',
  licence: '',
  ...over,
});

export const source = aSource();
export const clipOf = (over: Partial<Clip> = {}): Clip =>
  aClip({ ...inCourse, sourceId: source.id, topicIds: [deep.id], ...over });

/** A deck whose current course has a syllabus of three leaf topics: 30, 20 and 50 of 100 marks. */
export const courseRows = (more: Rows = {}): Rows => ({
  settings: [{ ...FIRST_SETTINGS, courseId: course.id }],
  courses: [course],
  topics: [waves, deep, shallow, tides],
  sources: [source],
  ...more,
});
