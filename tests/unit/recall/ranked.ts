import type { Ranked } from '#lib/recall/next-item.ts';
import { newId } from '../builders.ts';

interface Given {
  topicId: string;
  marks?: number;
  /** Chance on exam day if it is left out now. */
  chance?: number;
  chanceAdded?: number;
  seconds?: number;
  examMarks?: number;
  gain?: number;
}

/** A ranked item of which only some numbers matter. */
export function aRanked({ topicId, ...given }: Given): Ranked {
  const { marks = 1, chance = 0.5, chanceAdded = 0.1, seconds = 10, examMarks = 1 } = given;
  return {
    item: { kind: 'question', id: newId(), topicId, clipId: null, asks: 'a?', covers: 'b', marks },
    gain: given.gain ?? (examMarks * chanceAdded) / seconds,
    chanceNow: chance,
    chanceExamNow: chance,
    chanceExamAfter: chance + chanceAdded,
    why: {
      examMarks,
      chanceAdded,
      seconds,
      daysAhead: 30,
      isForExam: true,
      attempts: 0,
      daysSince: null,
      waited: 1,
      laterTurn: { ifAsked: 0, ifLeft: 0 },
    },
  };
}
