import { vi } from 'vitest';
import type { Item } from '#lib/model/item.ts';
import { itemOfLine, itemOfQuestion } from '#lib/model/item.ts';
import type { RoundPlan } from '#lib/ui/round/round-plan.ts';
import { RoundRunner } from '#lib/ui/round/round-runner.tsx';
import { aLine, aQuestion, aReason } from '../../builders.ts';
import { clipOf, course, deep, shallow, tides } from '../a-course.ts';
import { deckWith, renderInDeck } from '../render-in-deck.tsx';

const inCourse = { courseId: course.id };
export const clip = clipOf();
export const DISPERSION = itemOfQuestion(
  aQuestion({
    ...inCourse,
    topicId: deep.id,
    clipId: clip.id,
    prompt: 'State the dispersion relation for deep water.',
    answer: 'ω² = gk',
  }),
);
export const SPEED = itemOfQuestion(
  aQuestion({
    ...inCourse,
    topicId: shallow.id,
    prompt: 'Derive the speed of long waves in water of depth h.',
    answer: 'c² = (g/k) tanh kh, and tanh kh → kh, so c = √(gh)',
    marks: 3,
  }),
);
export const SPRING = itemOfLine(
  aLine({ ...inCourse, topicId: tides.id, lead: 'Spring tides', rest: 'come at new and full moon' }),
);
const [NEAP, RANGE] = ['Neap tides', 'Tidal range'].map((lead) =>
  itemOfLine(aLine({ ...inCourse, topicId: tides.id, lead })),
) as [Item, Item];
export const FURTHER = [NEAP, RANGE];

const NAMES = new Map([deep, shallow, tides].map(({ id, title }) => [id, title]));

/** A round on these items, with the deck that they are in and its attempts go into. */
export async function runRound(queue: Item[], minutes = 2, turned: Item[] = []) {
  const of = (kind: Item['kind']) => queue.filter((item) => item.kind === kind);
  const row = ({ id, topicId, clipId }: Item) => ({ ...inCourse, id, topicId, clipId });
  const db = await deckWith({
    questions: of('question').map((item) =>
      aQuestion({ ...row(item), prompt: item.asks, answer: item.covers, marks: item.marks }),
    ),
    lines: of('line').map((item) => aLine({ ...row(item), lead: item.asks, rest: item.covers })),
  });
  const again = vi.fn();
  const plan: RoundPlan = {
    courseId: course.id,
    minutes,
    queue: queue.map((item) => ({ item, reason: aReason() })),
    order: 'gain',
    turned: new Set(turned.map(({ id }) => id)),
  };
  renderInDeck(
    <RoundRunner
      plan={plan}
      topicName={(id) => NAMES.get(id) ?? ''}
      deskLink={(path) => `#/${path}`}
      again={again}
    />,
  );
  return { db, again };
}
