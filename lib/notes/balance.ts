import type { Course } from '#lib/model/course.ts';

/** How a topic's notes and questions compare with what its share of the exam would give it. */
export interface TopicBalance {
  topicId: string;
  /** Sides that its lines take, and those that its share of the target comes to. */
  sides: number;
  sidesDue: number;
  questions: number;
  questionsDue: number;
  /** Whether a topic stands out; by sides or questions that are far from what is due. */
  verdict: 'much' | 'little' | 'even';
}

/** Up to a sixth of a side, some ten lines, or two questions more or less, nothing stands out. Our choice. */
const SIDES_APART = 1 / 6;
const QUESTIONS_APART = 2;
/** So many times what is due is too much, and this part of it too little. Our choice. */
const MUCH = 1.75;
const LITTLE = 0.5;

/**
 * Compares each topic that counts with its share of the targets of its course.
 * @param shares parts of the exam, 0 to 1, by topic, in the order in which the topics are given back
 */
export function balanceOf(
  { targetSides, targetQuestions }: Pick<Course, 'targetSides' | 'targetQuestions'>,
  shares: ReadonlyMap<string, number>,
  sides: ReadonlyMap<string, number>,
  questions: ReadonlyMap<string, number>,
): TopicBalance[] {
  return [...shares].map(([topicId, share]) => {
    const own = {
      sides: sides.get(topicId) ?? 0,
      sidesDue: share * targetSides,
      questions: questions.get(topicId) ?? 0,
      questionsDue: share * targetQuestions,
    };
    return { topicId, ...own, verdict: verdictOn(own) };
  });
}

function verdictOn({
  sides,
  sidesDue,
  questions,
  questionsDue,
}: Omit<TopicBalance, 'topicId' | 'verdict'>): TopicBalance['verdict'] {
  const isMuch = (has: number, due: number, apart: number) => has > MUCH * due && has - due > apart;
  const isLittle = (has: number, due: number, apart: number) => has < LITTLE * due && due - has > apart;
  if (isMuch(sides, sidesDue, SIDES_APART) || isMuch(questions, questionsDue, QUESTIONS_APART)) return 'much';
  if (isLittle(sides, sidesDue, SIDES_APART) || isLittle(questions, questionsDue, QUESTIONS_APART))
    return 'little';
  return 'even';
}
