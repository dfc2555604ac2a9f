/** The 97.5 % quantile of the normal distribution: intervals hold 95 %. */
const Z = 1.959963984540054;

/** A proportion of 0 to 1 with the limits between which it lies at 95 %. */
export interface Interval {
  low: number;
  high: number;
}

/**
 * Wilson's interval for a proportion (1927), as in the NIST/SEMATECH e-Handbook of Statistical Methods, 7.2.4.1. Of
 * nothing tried, anything from 0 to 1 may be true.
 * @param successes of `tried`, 0 to `tried`
 */
export function wilson(successes: number, tried: number): Interval {
  if (tried === 0) return { low: 0, high: 1 };
  const p = successes / tried;
  const middle = p + Z ** 2 / (2 * tried);
  const reach = Z * Math.sqrt((p * (1 - p)) / tried + Z ** 2 / (4 * tried ** 2));
  const whole = 1 + Z ** 2 / tried;
  return { low: Math.max(0, (middle - reach) / whole), high: Math.min(1, (middle + reach) / whole) };
}

/** A proportion that counts for `weight` in a sum. */
export interface Weighed extends Interval {
  weight: number;
  estimate: number;
}

/**
 * The interval of a weighed sum of proportions that were found apart from each other, from the interval of each: the
 * squared distances to the limits add up as variances do (Newcombe 1998, Statistics in Medicine 17, 873-890, method 10,
 * for a difference; Zou & Donner 2008, Statistics in Medicine 27, 1693-1702, for sums). Weights may be negative.
 */
export function intervalOfSum(parts: readonly Weighed[]): Interval & { estimate: number } {
  let [estimate, below, above] = [0, 0, 0];
  for (const { weight, estimate: found, low, high } of parts) {
    const [down, up] = [weight * (found - low), weight * (high - found)];
    estimate += weight * found;
    below += (weight >= 0 ? down : up) ** 2;
    above += (weight >= 0 ? up : down) ** 2;
  }
  return { estimate, low: estimate - Math.sqrt(below), high: estimate + Math.sqrt(above) };
}
