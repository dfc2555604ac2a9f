import type { Attempt } from '#lib/model/attempt.ts';
import type { CourseDeck } from '#lib/store/course-deck.ts';
import { type Standing, standingAfter } from '#lib/ui/derive/next-up.ts';
import { coverDeck, progressOf, rankDeck } from '#lib/ui/derive/progress.ts';
import { type Figure, figure } from './figure.ts';
import { SyllabusMaker } from './make-syllabus.ts';
import { Random } from './random.ts';
import { inTurns, tookOnce } from './timing.ts';

const TOPICS = 500;
const ATTEMPTS = 100_000;
const NOW = Date.UTC(2026, 4, 14, 8);
const DAY = 86_400_000;
const random = new Random(7);

/**
 * Coverage of 500 topics over 15,000 questions, 5,000 lines and 5,000 clips with 100,000 attempts behind them, in Node:
 * from the rows alone, and after one attempt more, which is what a student waits for.
 */
export async function figures(): Promise<Figure[]> {
  const deck = makeDeck();
  const anew = () => coverDeck(deck, progressOf(deck, NOW));
  const first = await inTurns(
    { repeats: 5, warmUp: 2 },
    () => tookOnce(anew),
    () => tookOnce(() => groups(deck)),
  );
  const progress = progressOf(deck, NOW);
  let standing: Standing = { deck, progress, ranked: rankDeck(deck, progress, NOW) };
  let at = NOW;
  const after = await inTurns(
    { repeats: 15, warmUp: 5 },
    () =>
      tookOnce(() => {
        at += 10_000;
        standing = standingAfter(standing, attemptAt(deck, at), at)!;
        return coverDeck(standing.deck, standing.progress);
      }),
    () => tookOnce(() => countByTopic(deck)),
  );
  return [
    figure({
      name: 'syllabus/coverage-from-nothing-ms',
      value: first.ours,
      unit: 'ms',
      against: { what: 'bare grouping of the attempts by item', value: first.other },
      goal: { atMost: 1000 },
    }),
    figure({
      name: 'syllabus/coverage-after-one-attempt-ms',
      value: after.ours,
      unit: 'ms',
      against: { what: 'bare count of the rows by topic', value: after.other },
      goal: { atMost: 100 },
    }),
  ];
}

function makeDeck(): CourseDeck {
  const made = new SyllabusMaker(TOPICS);
  const [questions, lines, clips] = [made.questions(15_000), made.lines(5000), made.clips(5000, 20)];
  // Everything answers a statement of its topic, the worst case.
  const byTopic = new Map(made.statements.map(({ topicId, id }) => [topicId, [id]]));
  for (const one of [...questions, ...lines]) one.statementIds = byTopic.get(one.topicId) ?? [];
  for (const clip of clips) clip.statementIds = byTopic.get(clip.topicIds[0]!) ?? [];
  const { topics, statements } = made;
  const course = {
    id: topics[0]!.courseId,
    name: 'Made up',
    examDay: '2026-06-20',
    createdAt: NOW - 100 * DAY,
    changedAt: NOW,
  } as CourseDeck['course'];
  const deck: CourseDeck = {
    course,
    topics,
    statements,
    clips,
    sources: [],
    questions,
    lines,
    lessons: [],
    attempts: [],
  };
  // Rounds on sixty days, an attempt each ten seconds.
  const each = ATTEMPTS / 60;
  deck.attempts = Array.from({ length: ATTEMPTS }, (_, i) =>
    attemptAt(deck, NOW - (60 - Math.floor(i / each)) * DAY + (i % each) * 10_000),
  );
  return deck;
}

function attemptAt({ course, questions }: CourseDeck, at: number): Attempt {
  const { id, topicId } = random.pick(questions);
  const marks = random.next() < 0.8 ? 1 : 0;
  const rest = {
    itemKind: 'question' as const,
    roundId: random.id(),
    seconds: 9,
    outOf: 1,
    typed: '',
    order: 'gain' as const,
    turned: false,
  };
  return { id: random.id(), courseId: course.id, topicId, itemId: id, at, marks, ...rest };
}

const groups = ({ attempts }: CourseDeck) => Map.groupBy(attempts, ({ itemId }) => itemId);

function countByTopic({ questions, lines, clips }: CourseDeck): Map<string, number> {
  const counts = new Map<string, number>();
  const count = (topicId: string) => counts.set(topicId, (counts.get(topicId) ?? 0) + 1);
  for (const { topicId } of [...questions, ...lines]) count(topicId);
  for (const { topicIds } of clips) topicIds.forEach(count);
  return counts;
}
