import { z } from 'zod';
import { Id } from './basics.ts';

/** What the student chose last. One row, under SETTINGS_KEY. */
export const Settings = z.object({
  /** The course that the popup and the slip work on. */
  courseId: Id.nullable(),
  /** The topic that the next clip is meant for, set from a gap; null when none was aimed at. */
  aimedTopicId: Id.nullable(),
  /** Length of a round. */
  roundMinutes: z.number().int().min(1).max(20),
});
export type Settings = z.infer<typeof Settings>;

export const SETTINGS_KEY = 'settings';
export const FIRST_SETTINGS: Settings = { courseId: null, aimedTopicId: null, roundMinutes: 2 };
