import type { Attempt } from '#lib/model/attempt.ts';
import { type Course, FIRST_PRINT, FIRST_TARGETS } from '#lib/model/course.ts';
import type { Question } from '#lib/model/item.ts';
import { NEW_TOPIC, type Topic } from '#lib/model/topic.ts';
import { Random } from './random.ts';
import { Words } from './words.ts';

export interface DeckSize {
  topics: number;
  questions: number;
  attempts: number;
}

export interface MadeDeck {
  course: Course;
  topics: Topic[];
  questions: Question[];
  attempts: Attempt[];
}

const DAY_MS = 86_400_000;
const DAYS_OF_STUDY = 60;
const SECONDS_APART = 12;

/** A deck of one course as sixty days of study leave it: rounds each day, everything asked in turn. `now` in epoch ms. */
export function makeDeck({ topics, questions, attempts }: DeckSize, now: number): MadeDeck {
  const random = new Random(1);
  const words = new Words(random);
  const start = now - DAYS_OF_STUDY * DAY_MS;
  const kept = () => ({ id: random.id(), createdAt: start, changedAt: start });
  const examDay = new Date(now + 45 * DAY_MS).toISOString().slice(0, 10);
  const course: Course = {
    ...kept(),
    name: 'Foundation Oceanography',
    examDay,
    ...FIRST_TARGETS,
    ...FIRST_PRINT,
  };
  const courseId = course.id;
  const made: MadeDeck = { course, topics: [], questions: [], attempts: [] };
  for (let order = 0; order < topics; order++) {
    const place = { courseId, parentId: null, order, code: String(order + 1), share: null };
    const whole = { unit: 'parts' as const, group: '', off: false, ...NEW_TOPIC };
    made.topics.push({ ...kept(), ...place, ...whole, title: words.text(4) });
  }
  for (let i = 0; i < questions; i++) {
    const apart = { clipId: null, statementIds: [], lineId: null };
    const text = { prompt: `${words.text(10)}?`, answer: `${words.text(22)}.`, marks: 1 + random.below(3) };
    made.questions.push({ ...kept(), courseId, topicId: random.pick(made.topics).id, ...apart, ...text });
  }
  for (let i = 0; i < attempts; i++) made.attempts.push(attemptOf(made, i, attempts, start, random));
  return made;
}

function attemptOf(deck: MadeDeck, i: number, all: number, start: number, random: Random): Attempt {
  const question = deck.questions[i % deck.questions.length]!;
  const aDay = Math.ceil(all / DAYS_OF_STUDY);
  const at = start + Math.floor(i / aDay) * DAY_MS + (i % aDay) * SECONDS_APART * 1000;
  const lost = random.next() < 0.3 ? 1 + random.below(question.marks) : 0;
  return {
    id: random.id(),
    courseId: deck.course.id,
    topicId: question.topicId,
    itemKind: 'question',
    itemId: question.id,
    roundId: random.id(),
    at,
    seconds: 4 + random.below(20),
    marks: question.marks - lost,
    outOf: question.marks,
    typed: '',
    order: 'gain',
    turned: false,
  };
}
