import { vi } from 'vitest';
import type { Item } from '#lib/model/item.ts';
import { itemOfLine, itemOfQuestion } from '#lib/model/item.ts';
import { RoundCard } from '#lib/ui/round/round-card.tsx';
import { RoundEnd } from '#lib/ui/round/round-end.tsx';
import { useRound } from '#lib/ui/round/use-round.ts';
import { aLine, aQuestion } from '../../builders.ts';
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

function Round({ queue, minutes, again }: { queue: Item[]; minutes: number; again(): void }) {
  const running = useRound(course.id, queue, minutes);
  const name = (id: string) => NAMES.get(id) ?? '';
  return running.round.current ? (
    <RoundCard running={running} topicName={name} />
  ) : (
    <RoundEnd round={running.round} topicName={name} deskLink={(path) => `#/${path}`} again={again} />
  );
}

/** A round on these items, with the deck that its attempts go into. */
export async function runRound(queue: Item[], minutes = 2) {
  const db = await deckWith();
  const again = vi.fn();
  renderInDeck(<Round queue={queue} minutes={minutes} again={again} />);
  return { db, again };
}
