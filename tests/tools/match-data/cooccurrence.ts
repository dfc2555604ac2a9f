/** A symmetric sparse matrix, row by row. */
export interface Sparse {
  size: number;
  starts: Uint32Array;
  columns: Uint32Array;
  values: Float64Array;
}

/** Counts which stems stand together. */
export class Cooccurrence {
  readonly #rows: Map<number, number>[];

  constructor(size: number) {
    this.#rows = Array.from({ length: size }, () => new Map<number, number>());
  }

  /** Counts a pair in both directions. */
  add(a: number, b: number, weight: number): void {
    if (a === b) return;
    count(this.#rows[a]!, b, weight);
    count(this.#rows[b]!, a, weight);
  }

  /**
   * Positive pointwise mutual information with smoothed context counts (exponent 0.75) and small counts discounted.
   * Source: Levy, Goldberg & Dagan (2015), "Improving distributional similarity with lessons learned from word
   * embeddings", TACL 3, 211-225; discount: Pantel & Lin (2002), "Discovering word senses from text", KDD.
   */
  ppmi(): Sparse {
    const sums = this.#rows.map((row) => [...row.values()].reduce((sum, n) => sum + n, 0));
    const total = sums.reduce((sum, n) => sum + n, 0);
    const smooth = sums.map((sum) => sum ** SMOOTHING);
    const smoothTotal = smooth.reduce((sum, n) => sum + n, 0);
    const rows = this.#rows.map((row, a) =>
      [...row].flatMap(([b, n]): [number, number][] => {
        const both = [Math.log(n / total / ((sums[a]! / total) * (smooth[b]! / smoothTotal)))];
        both.push(Math.log(n / total / ((sums[b]! / total) * (smooth[a]! / smoothTotal))));
        const value = (both[0]! + both[1]!) / 2;
        const rarer = Math.min(sums[a]!, sums[b]!);
        const discounted = value * (n / (n + 1)) * (rarer / (rarer + 1));
        return discounted > 0 ? [[b, discounted]] : [];
      }),
    );
    return sparseOf(rows);
  }
}

const SMOOTHING = 0.75;

const count = (row: Map<number, number>, at: number, weight: number): unknown =>
  row.set(at, (row.get(at) ?? 0) + weight);

function sparseOf(rows: [number, number][][]): Sparse {
  const starts = new Uint32Array(rows.length + 1);
  rows.forEach((row, i) => (starts[i + 1] = starts[i]! + row.length));
  const columns = new Uint32Array(starts[rows.length]!);
  const values = new Float64Array(starts[rows.length]!);
  rows.forEach((row, i) =>
    row.forEach(([column, value], k) => {
      columns[starts[i]! + k] = column;
      values[starts[i]! + k] = value;
    }),
  );
  return { size: rows.length, starts, columns, values };
}
