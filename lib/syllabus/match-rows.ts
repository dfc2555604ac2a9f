import type { Statement, Topic } from '#lib/model/topic.ts';
import { parentsOf } from './outline/kinds.ts';
import type { OutlineDraftRow } from './outline-row.ts';
import type { Syllabus } from './rows-of.ts';
import { byIdOf, pathOf } from './tree.ts';

/** Something kept before, in the terms that rows are compared in. */
interface Known {
  kept: Topic | Statement;
  kind: OutlineDraftRow['kind'];
  text: string;
  /** The codes down to it: "(a)" alone says little. */
  codes: string;
}

type Keys = (thing: { kind: string; text: string; codes: string; code: string }) => string | null;

/** How a row may be known again without an id, the surest first. */
const WAYS: Keys[] = [
  ({ kind, codes, text }) => `${kind} ${codes} ${text}`,
  ({ kind, text, code }) => (code ? `${kind} ${code} ${text}` : null),
  ({ kind, text }) => `${kind} ${text}`,
  ({ kind, codes, code }) => (code ? `${kind} ${codes}` : null),
];

/**
 * For each row, the topic or statement that it was before: by its id; else by code and text (under the
 * same codes, then anywhere), by text alone, or by its
 * code within the codes above it, in this order. Texts are compared without regard to case, spaces and punctuation.
 * Each old one is taken once, in reading order, those that are off last; a row is never taken for something of the other kind.
 */
export function matchRows(
  rows: readonly OutlineDraftRow[],
  before: Syllabus,
): (Topic | Statement | undefined)[] {
  const known = knownOf(before);
  const found = matchIds(rows, known);
  const used = new Set(found);
  const codes = codesOf(rows);
  for (const way of WAYS) {
    const waiting = Map.groupBy(
      known.filter(({ kept }) => !used.has(kept)),
      (thing) => way({ ...thing, code: thing.kept.code }),
    );
    rows.forEach((row, i) => {
      if (found[i]) return;
      const key = way({ kind: row.kind, code: row.code, text: plain(row.text), codes: codes[i] ?? '' });
      const match = key === null ? undefined : waiting.get(key)?.shift();
      if (match) used.add((found[i] = match.kept));
    });
  }
  return found;
}

function matchIds(
  rows: readonly OutlineDraftRow[],
  known: readonly Known[],
): (Topic | Statement | undefined)[] {
  const byId = new Map(known.map((thing) => [`${thing.kind} ${thing.kept.id}`, thing.kept]));
  return rows.map(({ kind, id }) => {
    const kept = byId.get(`${kind} ${id ?? ''}`);
    byId.delete(`${kind} ${id ?? ''}`);
    return kept;
  });
}

function knownOf({ topics, statements }: Syllabus): Known[] {
  const byId = byIdOf(topics);
  const isOff = (thing: Topic | Statement): number => Number('off' in thing && thing.off);
  const inOrder = <Kept extends Topic | Statement>(all: readonly Kept[]): Kept[] =>
    all.toSorted((a, b) => isOff(a) - isOff(b) || a.order - b.order);
  const codesTo = (topic: Topic | undefined): string[] =>
    topic ? pathOf(topic, byId).map(({ code, title }) => code || plain(title)) : [];
  return [
    ...inOrder(topics).map((kept): Known => ({
      kept,
      kind: 'topic',
      text: plain(kept.title),
      codes: codesTo(kept).join('/'),
    })),
    ...inOrder(statements).map((kept): Known => {
      const codes = [...codesTo(byId.get(kept.topicId)), kept.code].join('/');
      return { kept, kind: 'statement', text: plain(kept.text), codes };
    }),
  ];
}

/** For each row, the codes (or, for want of one, texts) of the rows above it and its own. */
function codesOf(rows: readonly OutlineDraftRow[]): string[] {
  const codes: string[] = [];
  parentsOf(rows).forEach((parent, i) => {
    const row = rows[i];
    const above = codes[parent];
    const own = row ? row.code || plain(row.text) : '';
    codes.push(above === undefined ? own : `${above}/${own}`);
  });
  return codes;
}

const plain = (text: string): string =>
  text
    .toLowerCase()
    .replace(/[^\p{L}\p{N}]+/gu, ' ')
    .trim();
