import { alikePairs } from './alike.ts';
import type { PartOffer, PaperWish } from './offer.ts';
import { targetsOf, topicMarks } from './topic-marks.ts';

/** Parts that come together or not at all; most often a single one. */
export interface Unit {
  /** Places of its parts among the offers. */
  parts: number[];
  marks: number;
  /** To a thousandth. */
  minutes: number;
  /** Hundredths of a mark by topic, as in `Pool.targets`. */
  topics: Map<string, number>;
  /** How long unseen, times marks: see `worthOf`. A whole number. */
  worth: number;
  /** Days since any of its parts was seen; Infinity where none ever was. */
  daysUnseen: number;
}

/** What a paper can be built from. */
export interface Pool {
  units: Unit[];
  /** Groups of places in `units` of which only one may be chosen. */
  alike: number[][];
  /** Hundredths of a mark that each topic should have. */
  targets: Map<string, number>;
}

/** Weeks unseen count up to a year: what was never seen is no fresher than what was not seen for a year. Our choice. */
const MOST_WEEKS = 52;

/**
 * Merges parts that belong together, and tells near copies. A unit whose own parts are near copies is left out.
 *
 * The seed shuffles the units, and does nothing else. Of equals the search takes the one that comes first, so the seed
 * breaks ties; it is in no cost and no limit, so it cannot outweigh anything.
 */
export function poolOf(offers: readonly PartOffer[], wish: PaperWish): Pool {
  const pairs = alikePairs(offers.map(({ text }) => text));
  const unitOfPart = new Map<number, number>();
  const lot = new Map(offers.map(({ id }) => [id, drawn(id, wish.seed)]));
  const lotOf = ({ parts }: Unit) => lot.get(offers[parts[0]!]!.id)!;
  let units = grouped(offers)
    .map((parts) => unitOf(parts, offers))
    .sort((a, b) => lotOf(a) - lotOf(b) || a.parts[0]! - b.parts[0]!);
  const place = (all: readonly Unit[]) =>
    all.forEach(({ parts }, unit) => parts.forEach((part) => unitOfPart.set(part, unit)));
  place(units);
  const broken = new Set(
    pairs.flatMap(([a, b]) => (unitOfPart.get(a) === unitOfPart.get(b) ? [unitOfPart.get(a)!] : [])),
  );
  units = units.filter((_, unit) => !broken.has(unit));
  unitOfPart.clear();
  place(units);
  const edges = pairs.flatMap(([a, b]): [number, number][] => {
    const [one, other] = [unitOfPart.get(a), unitOfPart.get(b)];
    return one === undefined || other === undefined ? [] : [[one, other]];
  });
  return { units, alike: cliques(edges), targets: targetsOf(wish) };
}

function grouped(offers: readonly PartOffer[]): number[][] {
  const together = new Map<string, number[]>();
  const groups: number[][] = [];
  offers.forEach((offer, part) => {
    const group = offer.together ? together.get(offer.questionId) : undefined;
    if (group) return void group.push(part);
    const opened = [part];
    groups.push(opened);
    if (offer.together) together.set(offer.questionId, opened);
  });
  return groups;
}

function unitOf(parts: number[], offers: readonly PartOffer[]): Unit {
  const unit: Unit = {
    parts,
    marks: 0,
    minutes: 0,
    topics: new Map(),
    worth: 0,
    daysUnseen: Infinity,
  };
  for (const part of parts) {
    const offer = offers[part]!;
    unit.marks += offer.marks;
    unit.minutes = Number((unit.minutes + offer.minutes).toFixed(3));
    for (const [topic, marks] of topicMarks(offer))
      unit.topics.set(topic, (unit.topics.get(topic) ?? 0) + marks);
    unit.worth += worthOf(offer);
    unit.daysUnseen = Math.min(unit.daysUnseen, offer.daysUnseen ?? Infinity);
  }
  return unit;
}

/** Whole weeks unseen times marks, so that one long part counts like several short ones. */
export function worthOf({ daysUnseen, marks }: PartOffer): number {
  const weeks = Math.min(MOST_WEEKS, Math.floor((daysUnseen ?? Infinity) / 7));
  return weeks * marks;
}

/** A number for each id that is another with another seed (FNV-1a, with the finish of MurmurHash3). */
function drawn(id: string, seed: number): number {
  let hash = 0x811c9dc5 ^ seed;
  for (let at = 0; at < id.length; at++) hash = Math.imul(hash ^ id.charCodeAt(at), 0x01000193);
  hash = Math.imul(hash ^ (hash >>> 16), 0x85ebca6b);
  hash = Math.imul(hash ^ (hash >>> 13), 0xc2b2ae35);
  return (hash ^ (hash >>> 16)) >>> 0;
}

/** Groups that cover all pairs, each group alike throughout: one row of the model each, and a tighter one than pairs. */
function cliques(edges: readonly [number, number][]): number[][] {
  const beside = new Map<number, Set<number>>();
  const join = (a: number, b: number) => beside.set(a, (beside.get(a) ?? new Set()).add(b));
  for (const [a, b] of edges) {
    join(a, b);
    join(b, a);
  }
  const covered = new Set<string>();
  const key = (a: number, b: number) => (a < b ? `${a} ${b}` : `${b} ${a}`);
  const groups: number[][] = [];
  for (const [a, b] of edges) {
    if (covered.has(key(a, b))) continue;
    const group = [a, b];
    for (const c of beside.get(a)!)
      if (!group.includes(c) && group.every((member) => beside.get(member)!.has(c))) group.push(c);
    group.forEach((one, at) => group.slice(at + 1).forEach((other) => covered.add(key(one, other))));
    groups.push(group.sort((x, y) => x - y));
  }
  return groups;
}
