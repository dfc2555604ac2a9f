import type { Sparse } from './cooccurrence.ts';

const EXTRA = 16;
const ROUNDS = 5;

/**
 * The leading eigenvectors of a symmetric sparse matrix with their eigenvalues, by randomised subspace iteration
 * (Halko, Martinsson & Tropp 2011, SIAM Review 53(2), 217-288, algorithm 4.4), largest first by size.
 * @param random from 0 up to 1
 * @returns `vectors[i * count + k]`: component k of row i
 */
export function leadingVectors(
  matrix: Sparse,
  count: number,
  random: () => number,
): { vectors: Float64Array; values: Float64Array } {
  const width = count + EXTRA;
  let block = Float64Array.from({ length: matrix.size * width }, () => random() + random() + random() - 1.5);
  for (let round = 0; round < ROUNDS; round++) block = orthonormal(times(matrix, block, width), width);
  const image = times(matrix, block, width);
  const { values, vectors } = jacobi(gram(block, image, width), width);
  const order = [...values.keys()]
    .sort((a, b) => Math.abs(values[b]!) - Math.abs(values[a]!))
    .slice(0, count);
  const out = new Float64Array(matrix.size * count);
  for (let i = 0; i < matrix.size; i++) {
    order.forEach((from, k) => {
      let sum = 0;
      for (let j = 0; j < width; j++) sum += block[i * width + j]! * vectors[j * width + from]!;
      out[i * count + k] = sum;
    });
  }
  return { vectors: out, values: Float64Array.from(order, (k) => values[k]!) };
}

function times(matrix: Sparse, block: Float64Array, width: number): Float64Array<ArrayBuffer> {
  const out = new Float64Array(matrix.size * width);
  for (let i = 0; i < matrix.size; i++) {
    for (let at = matrix.starts[i]!; at < matrix.starts[i + 1]!; at++) {
      const value = matrix.values[at]!;
      const from = matrix.columns[at]! * width;
      for (let k = 0; k < width; k++) out[i * width + k]! += value * block[from + k]!;
    }
  }
  return out;
}

/** Modified Gram-Schmidt, twice for accuracy. */
function orthonormal(block: Float64Array<ArrayBuffer>, width: number): Float64Array<ArrayBuffer> {
  const rows = block.length / width;
  const columns = Array.from({ length: width }, (_, k) =>
    Float64Array.from({ length: rows }, (_, i) => block[i * width + k]!),
  );
  columns.forEach((column, k) => {
    for (let again = 0; again < 2; again++) {
      for (let j = 0; j < k; j++) {
        const other = columns[j]!;
        const along = dot(column, other);
        for (let i = 0; i < rows; i++) column[i]! -= along * other[i]!;
      }
    }
    const length = Math.sqrt(dot(column, column)) || 1;
    for (let i = 0; i < rows; i++) column[i]! /= length;
  });
  columns.forEach((column, k) => {
    for (let i = 0; i < rows; i++) block[i * width + k] = column[i]!;
  });
  return block;
}

function dot(a: Float64Array, b: Float64Array): number {
  let sum = 0;
  for (let i = 0; i < a.length; i++) sum += a[i]! * b[i]!;
  return sum;
}

/** The transpose of one block times another. */
function gram(a: Float64Array, b: Float64Array, width: number): Float64Array {
  const out = new Float64Array(width * width);
  for (let i = 0; i < a.length; i += width) {
    for (let j = 0; j < width; j++) {
      for (let k = 0; k < width; k++) out[j * width + k]! += a[i + j]! * b[i + k]!;
    }
  }
  return out;
}

/** Eigenvectors of a small symmetric matrix by Jacobi rotations. */
function jacobi(start: Float64Array, n: number): { values: Float64Array; vectors: Float64Array } {
  const a = Float64Array.from(start, (_, at) => (start[at]! + start[(at % n) * n + Math.floor(at / n)]!) / 2);
  const v = Float64Array.from({ length: n * n }, (_, at) => (at % n === Math.floor(at / n) ? 1 : 0));
  for (let sweep = 0; sweep < 30; sweep++) {
    for (let p = 0; p < n; p++) for (let q = p + 1; q < n; q++) rotate(a, v, n, p, q);
  }
  return { values: Float64Array.from({ length: n }, (_, k) => a[k * n + k]!), vectors: v };
}

function rotate(a: Float64Array, v: Float64Array, n: number, p: number, q: number): void {
  const off = a[p * n + q]!;
  if (Math.abs(off) < 1e-14) return;
  const theta = (a[q * n + q]! - a[p * n + p]!) / (2 * off);
  const t = Math.sign(theta || 1) / (Math.abs(theta) + Math.sqrt(theta * theta + 1));
  const c = 1 / Math.sqrt(t * t + 1);
  const s = t * c;
  const turn = (m: Float64Array, x: number, y: number): void => {
    const [mx, my] = [m[x]!, m[y]!];
    m[x] = c * mx - s * my;
    m[y] = s * mx + c * my;
  };
  for (let k = 0; k < n; k++) turn(a, k * n + p, k * n + q);
  for (let k = 0; k < n; k++) turn(a, p * n + k, q * n + k);
  for (let k = 0; k < n; k++) turn(v, k * n + p, k * n + q);
}
