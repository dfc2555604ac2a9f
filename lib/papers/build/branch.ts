import { costOf, type Model } from './model.ts';
import { Relaxation, type Relaxed } from './relaxation.ts';

/** How far a search is. */
export interface SearchProgress {
  /** Nodes looked at in this search. */
  nodes: number;
  /** The least cost found; Infinity where nothing was found yet. */
  best: number;
  /** No solution of this search costs less. */
  bound: number;
}

export interface Found {
  /** 'proven': nothing is better (or, without choices, nothing is possible). Otherwise the best until then. */
  status: 'proven' | 'given up' | 'cancelled';
  /** 1 for each column that is chosen; null where nothing was found. */
  choices: Int8Array | null;
  cost: number;
}

/** A search gives way at every node; what it is given back says whether to stop. */
export type Search = Generator<SearchProgress, Found, 'stop' | undefined>;

/** Where and how long to search. */
export interface Range {
  /** 0 or 1 for each column that is fixed, -1 for one that is free. */
  fixed: Int8Array;
  /** No choices cost less. */
  floor: number;
  /** To be beaten. */
  best: Pick<Found, 'choices' | 'cost'>;
  /** Nodes to look at before giving up. */
  nodes: number;
}

interface Node {
  fixed: Int8Array;
  bound: number;
}

/** How far a value may be from whole, and a cost from a multiple of the step. */
const NEARLY = 1e-6;

/** The cost is a multiple of the step, so what lies between two multiples may as well be the higher. */
export const raised = ({ step }: Model, bound: number): number => Math.ceil(bound / step - NEARLY) * step;

/** A cost as good as the best is none better. */
export const isBeaten = ({ step }: Model, bound: number, best: number): boolean =>
  bound > best - step * (1 - NEARLY);

/**
 * Branch and bound (Land and Doig 1960, Econometrica 28, 497-520): the relaxation of every part of the search bounds
 * what can be found there. The search dives towards what the relaxation takes most of, and goes back to the part with
 * the least bound. It is over when no part can hold anything better than the best found: that is the proof.
 */
export function* searched(model: Model, { fixed, floor, best, nodes: most }: Range): Search {
  const relaxation = new Relaxation(model);
  const found: Found = { status: 'proven', choices: best.choices, cost: best.cost };
  const open: Node[] = [{ fixed, bound: floor }];
  for (let nodes = 1; open.length > 0; nodes++) {
    const node = open.pop()!;
    if (isBeaten(model, node.bound, found.cost)) {
      bringBestToEnd(open);
      continue;
    }
    const bound = open.reduce((least, each) => Math.min(least, each.bound), node.bound);
    const answer = yield { nodes, best: found.cost, bound };
    if (answer === 'stop' || nodes > most)
      return { ...found, status: answer === 'stop' ? 'cancelled' : 'given up' };
    const column = lookedAt(model, relaxation, node, found);
    if (column) open.push(...branches(node, column));
    else bringBestToEnd(open);
  }
  return found;
}

/** A column to branch on, with the value to try first. */
interface Branching {
  column: number;
  first: 0 | 1;
}

/** Raises a node's bound and takes what is found there; null where there is nothing more to look for in it. */
function lookedAt(model: Model, relaxation: Relaxation, node: Node, found: Found): Branching | null {
  const relaxed = relaxation.solve(node.fixed);
  if (relaxed.status === 'infeasible') return null;
  if (relaxed.status === 'solved') node.bound = Math.max(node.bound, raised(model, relaxed.bound));
  if (isBeaten(model, node.bound, found.cost)) return null;
  let column = mostFractional(node.fixed, relaxed);
  if (column === -1) {
    const choices = rounded(node.fixed, relaxed);
    const cost = costOf(model, choices);
    if (cost < found.cost) Object.assign(found, { choices, cost });
    if (isBeaten(model, node.bound, found.cost)) return null;
    // The relaxation was wrong by its rounding errors, or gave up: go on with what is free.
    column = node.fixed.indexOf(-1);
    if (column === -1) return null;
  }
  return { column, first: relaxed.status !== 'solved' || relaxed.values[column]! >= 0.5 ? 1 : 0 };
}

/** The one to try first stands last. */
function branches({ fixed, bound }: Node, { column, first }: Branching): Node[] {
  return [1 - first, first].map((value) => {
    const branched = fixed.slice();
    branched[column] = value;
    return { fixed: branched, bound };
  });
}

/** Of equally good ones the latest: it is the deepest. */
function bringBestToEnd(open: Node[]): void {
  const last = open.length - 1;
  let at = last;
  for (let other = last - 1; other >= 0; other--) if (open[other]!.bound < open[at]!.bound) at = other;
  if (at < last) open.push(...open.splice(at, 1));
}

/** The choice whose value is furthest from whole; -1 where all are whole, or nothing is known. */
function mostFractional(fixed: Int8Array, relaxed: Relaxed): number {
  let [furthest, most] = [-1, NEARLY];
  if (relaxed.status !== 'solved') return furthest;
  fixed.forEach((value, column) => {
    if (value !== -1) return;
    const off = Math.abs(relaxed.values[column]! - Math.round(relaxed.values[column]!));
    if (off > most) [furthest, most] = [column, off];
  });
  return furthest;
}

/** The choices that a relaxation comes to where its values are whole. */
function rounded(fixed: Int8Array, relaxed: Relaxed): Int8Array {
  return relaxed.status === 'solved'
    ? Int8Array.from(relaxed.values, Math.round)
    : Int8Array.from(fixed, (value) => Math.max(value, 0));
}
