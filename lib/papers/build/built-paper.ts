import type { Obstacle } from './nearest.ts';
import type { PartOffer, PaperWish } from './offer.ts';
import { HUNDREDTHS, NO_TOPIC } from './topic-marks.ts';
import type { Pool } from './units.ts';

/** A topic's marks in a built paper. */
export interface TopicResult {
  /** Null for what is of no topic. */
  topicId: string | null;
  marks: number;
  /** Marks that it should have by its share; 0 where no share was wished for. */
  target: number;
}

export interface BuiltPaper {
  /** 'proven': no paper is better. 'cancelled': the best until then. */
  status: 'proven' | 'cancelled';
  /** Ids of the parts in order; null where there is no paper, or none was found yet. */
  parts: string[] | null;
  marks: number;
  minutes: number;
  /** Topics that have marks or should have some. */
  topics: TopicResult[];
  /** Marks by which topics are off what they should have, all added up. */
  deviation: number;
  /** Wishes that no paper keeps to, with the nearest values that one does; empty where the wish was kept to. */
  inTheWay: Obstacle[];
  /** All of `inTheWay` have to give; else any one of them is enough. */
  allInTheWay: boolean;
  /** The wish that this paper keeps to. */
  kept: PaperWish;
}

/** What is known of a paper before its parts are put in order. */
export interface Outcome {
  /** Places in the pool's units. */
  units: number[] | null;
  proven: boolean;
  inTheWay: Obstacle[];
  allInTheWay: boolean;
  kept: PaperWish;
}

/** A paper with its totals, its parts in the order wished for. */
export function paperOf(
  offers: readonly PartOffer[],
  pool: Pool,
  { units, proven, ...outcome }: Outcome,
): BuiltPaper {
  const chosen = (units ?? []).map((unit) => pool.units[unit]!);
  const topics = topicsOf(pool, chosen);
  return {
    status: proven ? 'proven' : 'cancelled',
    parts: units && inOrder(chosen, outcome.kept).map((part) => offers[part]!.id),
    marks: chosen.reduce((sum, { marks }) => sum + marks, 0),
    minutes: Number(chosen.reduce((sum, { minutes }) => sum + minutes, 0).toFixed(3)),
    topics,
    deviation: Number(
      topics.reduce((sum, { marks, target }) => sum + Math.abs(marks - target), 0).toFixed(2),
    ),
    ...outcome,
  };
}

function topicsOf({ targets }: Pool, chosen: Pool['units']): TopicResult[] {
  const hundredths = new Map([...targets.keys()].map((topic) => [topic, 0]));
  for (const { topics } of chosen)
    for (const [topic, marks] of topics) hundredths.set(topic, (hundredths.get(topic) ?? 0) + marks);
  return [...hundredths].map(([topic, marks]) => ({
    topicId: topic === NO_TOPIC ? null : topic,
    marks: marks / HUNDREDTHS,
    target: (targets.get(topic) ?? 0) / HUNDREDTHS,
  }));
}

/** Places of parts. Those of one unit stay together; by topic, a unit stands with the topic that has most of its marks. */
function inOrder(chosen: Pool['units'], { order, shares }: PaperWish): number[] {
  const places = new Map(Object.keys(shares).map((topic, place) => [topic, place]));
  const placeOf = ({ topics }: Pool['units'][number]) => {
    const [main] = [...topics].reduce((most, each) => (each[1] > most[1] ? each : most));
    return places.get(main) ?? places.size;
  };
  const sorted = chosen.toSorted((a, b) => a.parts[0]! - b.parts[0]!);
  if (order === 'by topic') sorted.sort((a, b) => placeOf(a) - placeOf(b));
  return sorted.flatMap(({ parts }) => parts);
}
