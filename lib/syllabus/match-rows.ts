import type { Statement, Topic } from '#lib/model/topic.ts';
import { type Weights, alike, weightsOf, wordsOf } from './likeness.ts';
import { Stems } from './match/terms.ts';
import { parentsOf } from './outline/kinds.ts';
import type { OutlineDraftRow } from './outline-row.ts';
import type { Syllabus } from './rows-of.ts';
import { byIdOf, pathOf } from './tree.ts';

type Kept = Topic | Statement;

/** A row, or something kept before, in the terms that they are compared in. */
interface Told {
  kind: OutlineDraftRow['kind'];
  code: string;
  /** Without regard to case, spaces and punctuation. */
  text: string;
  /** The codes down to it: "(a)" alone says little. */
  codes: string;
  words: ReadonlySet<string>;
}

interface Known extends Told {
  kept: Kept;
}

type Keys = (thing: Told) => string | null;

/** How a row may be known again by what it says, the surest first. */
const WAYS: Keys[] = [
  ({ kind, codes, text }) => `${kind} ${codes} ${text}`,
  ({ kind, text, code }) => (code ? `${kind} ${code} ${text}` : null),
  ({ kind, text }) => `${kind} ${text}`,
];
const BY_CODE: Keys = ({ kind, codes, code }) => (code ? `${kind} ${codes}` : null);

/** Texts that have this much in common are the same, reworded. Our choice. */
const REWORDED = 0.6;
/** Under the same code, this much is enough: a topic that shares nothing with the old one is another. Our choice. */
const SAME_CODE = 0.4;

/** A word that more than this many have does not bring two together: time stays in proportion to the syllabus. */
const MOST_NEAR = 100;

/** What is compared, and what is settled so far. */
interface Matching {
  rows: readonly OutlineDraftRow[];
  told: readonly Told[];
  known: readonly Known[];
  weights: Weights;
  found: (Kept | undefined)[];
  used: Set<Kept>;
}

/**
 * For each row, the topic or statement that it was before: by its id; else by code and text (under the same codes, then
 * anywhere), by text alone, by its code within the codes above it where the texts have something in common, or by a
 * text that is much alike, in this order. Each old one is taken once, in reading order, those that were dropped last; a
 * row is never taken for something of the other kind, nor is one that the student calls new.
 */
export function matchRows(rows: readonly OutlineDraftRow[], before: Syllabus): (Kept | undefined)[] {
  const stems = new Stems();
  const known = knownOf(before, stems);
  const told = toldOf(rows, stems);
  const found = matchIds(rows, known);
  const matching: Matching = {
    rows,
    told,
    known,
    weights: weightsOf([...known, ...told].map(({ words }) => words)),
    found,
    used: new Set(found.filter((kept) => kept !== undefined)),
  };
  for (const way of WAYS) matchBy(way, matching);
  matchBy(BY_CODE, matching, SAME_CODE);
  matchAlike(matching);
  return found;
}

const waitingIn = ({ rows, found }: Matching): number[] =>
  [...rows.keys()].filter((i) => !found[i] && !rows[i]!.isNew);

const leftIn = ({ known, used }: Matching): Known[] => known.filter(({ kept }) => !used.has(kept));

function take({ found, used }: Matching, i: number, kept: Kept): void {
  found[i] = kept;
  used.add(kept);
}

function matchBy(way: Keys, matching: Matching, least = 0): void {
  const { told, weights } = matching;
  const byKey = Map.groupBy(leftIn(matching), way);
  for (const i of waitingIn(matching)) {
    const key = way(told[i]!);
    const all = key === null ? undefined : byKey.get(key);
    const first = all?.[0];
    if (!all || !first || (alike(told[i]!.words, first.words, weights) ?? 1) < least) continue;
    all.shift();
    take(matching, i, first.kept);
  }
}

/** Pairs of rows and old ones whose texts are much alike, the most alike first. */
function matchAlike(matching: Matching): void {
  const { told, weights, found, used } = matching;
  const byWord = new Map<string, Known[]>();
  for (const thing of leftIn(matching))
    for (const word of thing.words) byWord.set(word, [...(byWord.get(word) ?? []), thing]);
  const pairs = waitingIn(matching).flatMap((i) => {
    const mine = told[i]!;
    const telling = [...mine.words]
      .map((word) => byWord.get(word) ?? [])
      .filter((all) => all.length <= MOST_NEAR);
    const near = new Set(telling.flat());
    return [...near]
      .filter(({ kind }) => kind === mine.kind)
      .map((thing) => ({ i, thing, likeness: alike(mine.words, thing.words, weights) ?? 0 }))
      .filter(({ likeness }) => likeness >= REWORDED);
  });
  for (const { i, thing } of pairs.sort((a, b) => b.likeness - a.likeness || a.i - b.i))
    if (!found[i] && !used.has(thing.kept)) take(matching, i, thing.kept);
}

function matchIds(rows: readonly OutlineDraftRow[], known: readonly Known[]): (Kept | undefined)[] {
  const byId = new Map(known.map((thing) => [`${thing.kind} ${thing.kept.id}`, thing.kept]));
  return rows.map(({ kind, id }) => {
    const kept = byId.get(`${kind} ${id ?? ''}`);
    byId.delete(`${kind} ${id ?? ''}`);
    return kept;
  });
}

function knownOf({ topics, statements }: Syllabus, stems: Stems): Known[] {
  const byId = byIdOf(topics);
  const isDropped = (thing: Kept): number => Number('dropped' in thing && thing.dropped);
  const inOrder = <K extends Kept>(all: readonly K[]): K[] =>
    all.toSorted((a, b) => isDropped(a) - isDropped(b) || a.order - b.order);
  const codesTo = (topic: Topic | undefined): string[] =>
    topic ? pathOf(topic, byId).map(({ code, title }) => code || plain(title)) : [];
  const known = (kept: Kept, kind: Told['kind'], text: string, codes: readonly string[]): Known => ({
    kept,
    kind,
    code: kept.code,
    text: plain(text),
    codes: codes.join('/'),
    words: wordsOf(text, stems),
  });
  return [
    ...inOrder(topics).map((kept) => known(kept, 'topic', kept.title, codesTo(kept))),
    ...inOrder(statements).map((kept) =>
      known(kept, 'statement', kept.text, [...codesTo(byId.get(kept.topicId)), kept.code]),
    ),
  ];
}

/** Each row with the codes (or, for want of one, texts) of the rows above it and its own. */
function toldOf(rows: readonly OutlineDraftRow[], stems: Stems): Told[] {
  const told: Told[] = [];
  parentsOf(rows).forEach((parent, i) => {
    const { kind, code, text } = rows[i]!;
    const above = told[parent]?.codes;
    const own = code || plain(text);
    const codes = above === undefined ? own : `${above}/${own}`;
    told.push({ kind, code, text: plain(text), codes, words: wordsOf(text, stems) });
  });
  return told;
}

const plain = (text: string): string =>
  text
    .toLowerCase()
    .replace(/[^\p{L}\p{N}]+/gu, ' ')
    .trim();
