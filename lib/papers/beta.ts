/** ln Γ(x) for x > 0: the approximation of Lanczos (1964) with g = 7 and nine terms. From memory; tests check it. */
const LANCZOS = [
  0.99999999999980993, 676.5203681218851, -1259.1392167224028, 771.32342877765313, -176.61502916214059,
  12.507343278686905, -0.13857109526572012, 9.9843695780195716e-6, 1.5056327351493116e-7,
];

function logGamma(x: number): number {
  const sum = LANCZOS.reduce((all, term, i) => (i === 0 ? term : all + term / (x + i - 1)), 0);
  const t = x + 6.5;
  return 0.5 * Math.log(2 * Math.PI) + (x - 0.5) * Math.log(t) - t + Math.log(sum);
}

const STEPS = 500;
const SMALL = 1e-15;
const TINY = 1e-300;

/**
 * The chance that a Beta-distributed part is at most x: the regularised incomplete beta function, by its continued
 * fraction (NIST Digital Library of Mathematical Functions, 8.17.22) with Lentz's algorithm.
 * @param a,b above 0
 * @param x 0 to 1
 */
export function betaChance(a: number, b: number, x: number): number {
  if (x <= 0) return 0;
  if (x >= 1) return 1;
  // The fraction converges fast on this side of the mean only.
  if (x > (a + 1) / (a + b + 2)) return 1 - betaChance(b, a, 1 - x);
  const front = Math.exp(
    a * Math.log(x) + b * Math.log1p(-x) + logGamma(a + b) - logGamma(a) - logGamma(b) - Math.log(a),
  );
  // 1 + d1 / (1 + d2 / (1 + …)), of which the function is the inverse.
  let [c, d, fraction] = [1, 0, 1];
  for (let step = 1; step < STEPS; step++) {
    const term = termOf(step, a, b, x);
    d = 1 / awayFromZero(1 + term * d);
    c = awayFromZero(1 + term / c);
    fraction *= c * d;
    if (Math.abs(c * d - 1) < SMALL) break;
  }
  return Math.min(1, front / fraction);
}

function termOf(step: number, a: number, b: number, x: number): number {
  const m = Math.floor(step / 2);
  return step % 2 === 0
    ? (m * (b - m) * x) / ((a + 2 * m - 1) * (a + 2 * m))
    : (-(a + m) * (a + b + m) * x) / ((a + 2 * m) * (a + 2 * m + 1));
}

const awayFromZero = (value: number): number => (Math.abs(value) < TINY ? TINY : value);

/** The part below which a Beta-distributed one lies with a chance of 0 to 1: by halving, to 1e-12. */
export function betaQuantile(a: number, b: number, chance: number): number {
  let [low, high] = [0, 1];
  while (high - low > 1e-12) {
    const middle = (low + high) / 2;
    if (betaChance(a, b, middle) < chance) low = middle;
    else high = middle;
  }
  return (low + high) / 2;
}
