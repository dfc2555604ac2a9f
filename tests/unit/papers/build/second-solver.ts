import loadHighs from 'highs';
import { dice, stemsOf } from '#lib/notes/draft/likeness.ts';
import type { PartOffer, PaperWish } from '#lib/papers/build/offer.ts';

const highs = await loadHighs();

/** What the second solver is to make least or greatest. */
type Objective = 'deviation' | 'value' | 'marks off' | 'minutes';

/** A paper as the second solver has it: every part is a column, nothing is left out or merged. */
export interface SecondModel {
  offers: readonly PartOffer[];
  wish: PaperWish;
  /** Marks that each topic should have. */
  targets: ReadonlyMap<string, number>;
  /** Places of parts that are near copies. */
  alike: readonly [number, number][];
}

/** Every pair of near copies, each compared with each. */
export function allAlike(offers: readonly PartOffer[]): [number, number][] {
  const stems = offers.map(({ text }) => stemsOf(text));
  return stems.flatMap((a, one) =>
    stems.flatMap((b, other): [number, number][] => (one < other && dice(a, b) >= 0.8 ? [[one, other]] : [])),
  );
}

/**
 * The optimum by HiGHS (the npm package highs), from the wish itself; null where there is no paper.
 * @param deviation the most that topics may be off in all, in marks
 */
export function secondOptimum(model: SecondModel, objective: Objective, deviation = Infinity): number | null {
  const { Status, ObjectiveValue } = highs.solve(lpText(model, objective, deviation), {
    output_flag: false,
    mip_rel_gap: 0,
    mip_abs_gap: objective === 'value' || objective === 'marks off' ? 0.5 : 0.0004,
  });
  if (Status === 'Infeasible') return null;
  if (Status !== 'Optimal') throw new Error(`The second solver says ${Status}`);
  return ObjectiveValue;
}

/** Whole weeks unseen, a year at most, as much where never seen; times marks; docs/method.md. */
export const worth = ({ daysUnseen, marks }: PartOffer) =>
  marks * (daysUnseen === null ? 52 : Math.min(52, Math.floor(daysUnseen / 7)));

const x = (place: number) => `x${place}`;
const sum = (terms: [number, string][]) =>
  terms.map(([by, name]) => `${by < 0 ? '-' : '+'} ${Math.abs(by)} ${name}`).join('\n ') || '0 x0';

function lpText({ offers, wish, targets, alike }: SecondModel, objective: Objective, deviation: number) {
  const rows: string[] = [];
  const bounds: string[] = [];
  const ofAll = (value: (offer: PartOffer) => number): [number, string][] =>
    offers.map((offer, place): [number, string] => [value(offer), x(place)]).filter(([by]) => by !== 0);
  const marks = ofAll((offer) => offer.marks);
  if (objective === 'marks off') rows.push(`${sum(marks)} - over + under = ${wish.marks}`);
  else rows.push(`${sum(marks)} <= ${wish.marks + wish.marksTolerance}`);
  rows.push(
    `${sum(marks)} >= ${objective === 'marks off' ? 1 : Math.max(1, wish.marks - wish.marksTolerance)}`,
  );
  if (wish.minutes !== null && objective !== 'minutes')
    rows.push(`${sum(ofAll((offer) => offer.minutes))} <= ${wish.minutes}`);
  const measures: [number, string][] = [];
  if (objective === 'deviation' || objective === 'value') {
    const topics = [...new Set([...targets.keys(), ...offers.flatMap((each) => Object.keys(each.topics))])];
    topics.forEach((topic, at) => {
      const inTopic = ofAll((offer) => (offer.topics[topic] ?? 0) * offer.marks);
      if (inTopic.length === 0) inTopic.push([0, 'x0']);
      rows.push(`${sum(inTopic)} - o${at} + u${at} = ${targets.get(topic) ?? 0}`);
      measures.push([1, `o${at}`], [1, `u${at}`]);
    });
    if (deviation < Infinity) rows.push(`${sum(measures)} <= ${deviation + 1e-4}`);
  }
  const first = new Map<string, number>();
  offers.forEach(({ together, questionId, daysUnseen }, place) => {
    if (daysUnseen !== null && daysUnseen < wish.notSeenForDays) bounds.push(`${x(place)} <= 0`);
    if (!together) return;
    const leader = first.get(questionId);
    if (leader === undefined) first.set(questionId, place);
    else rows.push(`${x(place)} - ${x(leader)} = 0`);
  });
  for (const [one, other] of alike) rows.push(`${x(one)} + ${x(other)} <= 1`);
  const goal = {
    deviation: () => measures,
    value: () => ofAll(worth),
    'marks off': (): [number, string][] => [
      [1, 'over'],
      [1, 'under'],
    ],
    minutes: () => ofAll((offer) => offer.minutes),
  }[objective]();
  return [
    objective === 'value' ? 'Maximize' : 'Minimize',
    ` goal: ${sum(goal)}`,
    'Subject To',
    ...rows.map((row, at) => ` r${at}: ${row}`),
    'Bounds',
    ...bounds,
    'Binaries',
    offers.map((_, place) => x(place)).join(' '),
    'End',
  ].join('\n');
}
