/** Plain arithmetic on vectors of one length. */

/** Adds `weight` times a vector to another. */
export function addTo(into: Float32Array, vector: Float32Array, weight = 1): void {
  for (let k = 0; k < into.length; k++) into[k]! += weight * vector[k]!;
}

/** The vector at length 1; a vector of zeros stays as it is. */
export function unit(vector: Float32Array): Float32Array {
  const long = length(vector);
  if (long === 0) return vector;
  const out = new Float32Array(vector.length);
  addTo(out, vector, 1 / long);
  return out;
}

export const length = (vector: Float32Array): number => Math.sqrt(dot(vector, vector));

export function dot(a: Float32Array, b: Float32Array): number {
  let sum = 0;
  for (let k = 0; k < a.length; k++) sum += a[k]! * b[k]!;
  return sum;
}
