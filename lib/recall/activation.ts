/**
 * The activation model of practice and forgetting.
 *
 *   m_n = ln( sum of t_i ^ -d_i ),  d_i = c e^(m_(i-1)) + a,  d_1 = a,  p = 1 / (1 + e^((tau - m) / s))
 *
 * where t_i is the age in seconds of presentation i, and the decay d_i is the larger the stronger the memory
 * was when presentation i came: practice that comes too soon fades faster.
 *
 * Source: Pavlik & Anderson (2005), Cognitive Science 29(4), 559-586, doi 10.1207/s15516709cog0000_14.
 */

/** Decay of a first presentation. Published, high confidence. */
export const DECAY_FLOOR = 0.177;

/** How much present strength adds to the decay of the next presentation. Published, high confidence. */
export const DECAY_SCALE = 0.217;

/** tau: the activation at which recall is an even chance. Medium confidence: one secondary lineage gives it. */
export const THRESHOLD = -0.704;

/** s: spread of the noise about the threshold. Medium confidence: one secondary lineage gives it. */
export const NOISE = 0.255;

/** The youngest age that counts, in seconds: a younger one, or one in the future, is taken as this. Our choice. */
export const LEAST_AGE = 1;

/** One time the item was seen with its answer: a moment in seconds on any fixed axis, and how fast it fades. */
export interface Presentation {
  at: number;
  decay: number;
}

/** The summed strength e^m that presentations have at a moment (seconds, same axis as theirs); 0 for none. */
export function strength(presentations: readonly Presentation[], at: number): number {
  let sum = 0;
  for (const one of presentations) sum += Math.max(LEAST_AGE, at - one.at) ** -one.decay;
  return sum;
}

/** The decay of a presentation that comes while the item has this strength. */
export const decayAfter = (strengthBefore: number): number => DECAY_SCALE * strengthBefore + DECAY_FLOOR;

/**
 * Presentations at these moments, each with its decay.
 * @param times seconds on any fixed axis, oldest first
 */
export function decays(times: readonly number[]): Presentation[] {
  const seen: Presentation[] = [];
  for (const at of times) seen.push({ at, decay: decayAfter(strength(seen, at)) });
  return seen;
}

/** Activation m at a moment (seconds, same axis as the presentations); -Infinity for none. */
export function activation(presentations: readonly Presentation[], at: number): number {
  return Math.log(strength(presentations, at));
}

/** Chance of recall, 0 to 1, at activation m. */
export function chanceOfRecall(m: number): number {
  return 1 / (1 + Math.exp((THRESHOLD - m) / NOISE));
}
