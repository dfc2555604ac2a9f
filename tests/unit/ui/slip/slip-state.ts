import type { SlipState, SlipTopic } from '#lib/model/message.ts';

const topic = (id: string, code: string, title: string, depth = 1): SlipTopic => ({ id, code, title, depth });

export const DEEP = topic('deep', '1.1', 'Deep water');
export const SHALLOW = topic('shallow', '1.2', 'Shallow water');
export const TIDES = topic('tides', '2', 'Tides', 0);
export const PRESSURE = topic('pressure', '3.1', 'Hydrostatic pressure');

/** A slip on a passage about deep water, before anything was decided. */
export const slipState = (over: Partial<SlipState> = {}): SlipState => ({
  courseId: 'course',
  courseName: 'Foundation Oceanography',
  topics: [topic('waves', '1', 'Waves at sea', 0), DEEP, SHALLOW, TIDES, PRESSURE],
  suggestions: [
    { topicId: DEEP.id, chance: 0.714, terms: ['deep water', 'wavelength'] },
    { topicId: SHALLOW.id, chance: 0.2, terms: ['waves'] },
  ],
  offSyllabus: false,
  aimedTopicId: null,
  kept: null,
  ...over,
});
