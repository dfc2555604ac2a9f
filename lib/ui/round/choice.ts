import type { RoundOrder } from '#lib/model/round-order.ts';
import type { Upcoming } from '#lib/model/next-up.ts';
import { canBeTurned, inDirection } from '#lib/recall/directions.ts';
import { type Ranked, nextItems } from '#lib/recall/next-item.ts';
import { weakTopics } from '#lib/recall/weak-topics.ts';
import type { BriefDeck } from '#lib/store/course-deck.ts';
import type { BriefStanding } from '../derive/next-up.ts';
import { reasonOf } from '../derive/why.ts';
import type { RoundPlan } from './round-plan.ts';

/** What a round is over. */
export type Scope = { of: 'all' | 'weak' | 'unclear' } | { of: 'topic'; topicId: string };

/** A round as the student chose it. */
export interface RoundChoice {
  scope: Scope;
  order: RoundOrder;
  minutes: number;
  /** Questions are asked from the answer's side where that makes sense. */
  turned: boolean;
}

/** As many as a student could answer in the longest round at a few seconds each. */
const LONGEST_QUEUE = 400;

/** The items of a scope that may be asked, the one that gains most now first. */
export function itemsOf({ deck, ranked }: BriefStanding, scope: Scope): Ranked[] {
  switch (scope.of) {
    case 'all':
      return ranked;
    case 'topic': {
      const wanted = withBelow(deck, scope.topicId);
      return ranked.filter(({ item }) => wanted.has(item.topicId));
    }
    case 'weak': {
      const wanted = new Set(weakTopics(ranked).map(({ topicId }) => topicId));
      return ranked.filter(({ item }) => wanted.has(item.topicId));
    }
    case 'unclear': {
      const wanted = new Set(deck.clips.filter(({ unclear }) => unclear).map(({ id }) => id));
      const topics = new Set(
        deck.topics.filter(({ unclear }) => unclear).flatMap(({ id }) => [...withBelow(deck, id)]),
      );
      return ranked.filter(({ item }) => topics.has(item.topicId) || wanted.has(item.clipId ?? ''));
    }
  }
}

/**
 * The round that was chosen.
 * @param now the moment that the standing was worked out for, epoch ms
 * @param random a number from 0 up to 1
 */
export function planOf(
  standing: BriefStanding,
  choice: RoundChoice,
  now: number,
  random: () => number = Math.random,
): RoundPlan {
  const items = itemsOf(standing, choice.scope);
  const ordered =
    choice.order === 'gain'
      ? nextItems(items, LONGEST_QUEUE)
      : inDirection(asInNotes(standing.deck, items), choice.order, random).slice(0, LONGEST_QUEUE);
  const queue: Upcoming[] = ordered.map((one) => ({ item: one.item, reason: reasonOf(one, now) }));
  const turned = choice.turned
    ? queue.filter(({ item }) => item.kind === 'question' && canBeTurned(item)).map(({ item }) => item.id)
    : [];
  const { minutes, order } = choice;
  return { courseId: standing.deck.course.id, minutes, order, queue, turned: new Set(turned) };
}

/** A topic and all below it. */
export function withBelow(deck: Pick<BriefDeck, 'topics'>, topicId: string): Set<string> {
  const wanted = new Set([topicId]);
  // Topics come in reading order: a parent stands before its children.
  for (const topic of deck.topics) if (wanted.has(topic.parentId ?? '')) wanted.add(topic.id);
  return wanted;
}

/** The topics that items stand under, and all above them. */
export function withAbove({ topics }: Pick<BriefDeck, 'topics'>, items: readonly Ranked[]): Set<string> {
  const wanted = new Set(items.map(({ item }) => item.topicId));
  // From the last to the first: children are met before their parents.
  for (const { id, parentId } of topics.toReversed()) if (parentId && wanted.has(id)) wanted.add(parentId);
  return wanted;
}

/** In the order of the notes: by topic as the syllabus stands, its lines as they stand, then its questions by age. */
function asInNotes({ topics, lines, questions }: BriefDeck, items: readonly Ranked[]): Ranked[] {
  const topicPlace = new Map(topics.map(({ id }, place) => [id, place]));
  const place = new Map([...lines, ...questions].map(({ id }, at) => [id, at]));
  return items.toSorted(
    (a, b) =>
      (topicPlace.get(a.item.topicId) ?? 0) - (topicPlace.get(b.item.topicId) ?? 0) ||
      place.get(a.item.id)! - place.get(b.item.id)!,
  );
}
