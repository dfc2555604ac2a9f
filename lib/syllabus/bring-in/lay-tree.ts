/** A tree laid out in reading order. */
export interface LaidTree {
  /** Places of the nodes, each behind the one it stands under. */
  order: number[];
  /** How deep each node stands, by its place. */
  depths: number[];
  /** Places of nodes that stood in a circle: of each circle the first, which stands at the top instead. */
  looped: number[];
}

/**
 * Lays nodes out that each name the one they stand under. A circle is opened at its first node. Takes time in
 * proportion to the nodes.
 *
 * @param parents by place, the place of the node above; null at the top
 * @param compare which of two siblings comes first; they stay as they are where it says 0
 */
export function layTree(
  parents: readonly (number | null)[],
  compare: (a: number, b: number) => number = () => 0,
): LaidTree {
  const { above, looped } = withoutCircles(parents);
  const below = Map.groupBy(above.keys(), (i) => above[i] ?? null);
  const order: number[] = [];
  const depths = above.map(() => 0);
  // By hand, since a tree may be as deep as it has nodes.
  const waiting = (below.get(null) ?? []).toSorted(compare).reverse();
  for (let at = waiting.pop(); at !== undefined; at = waiting.pop()) {
    const parent = above[at] ?? null;
    depths[at] = parent === null ? 0 : depths[parent]! + 1;
    order.push(at);
    for (const child of (below.get(at) ?? []).toSorted(compare).reverse()) waiting.push(child);
  }
  return { order, depths, looped };
}

function withoutCircles(parents: readonly (number | null)[]): {
  above: (number | null)[];
  looped: number[];
} {
  const above = [...parents];
  const looped: number[] = [];
  const walkOf = above.map(() => -1);
  for (const start of above.keys()) {
    for (let at: number | null = start; at !== null && walkOf[at] === -1; at = above[at] ?? null) {
      walkOf[at] = start;
      const next: number | null = above[at] ?? null;
      // Met on this very walk: a circle. Its first node in the order of the source is taken out of it.
      if (next !== null && walkOf[next] === start) {
        const first = firstOfCircle(above, next);
        above[first] = null;
        looped.push(first);
        break;
      }
    }
  }
  return { above, looped };
}

function firstOfCircle(above: readonly (number | null)[], from: number): number {
  let first = from;
  for (let at = above[from] ?? null; at !== null && at !== from; at = above[at] ?? null)
    first = Math.min(first, at);
  return first;
}
