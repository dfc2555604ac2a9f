import type { Random } from '../random.ts';

/** What one item is to one simulated student. Moments in seconds on any fixed axis, never running backwards. */
export interface Trace {
  /** Chance of full marks, 0 to 1, at a moment no earlier than the latest practice. */
  chance(at: number): number;
  /** The answer is seen, after an attempt or when it is written. */
  practise(at: number): void;
}

/** A law of forgetting: makes the trace of one item, by chance easier or harder, just written at a moment. */
export interface Law {
  name: string;
  trace(random: Random, writtenAt: number, student: Leaning): Trace;
}

/** How one student differs from others: standard normal numbers. */
export interface Leaning {
  /** Forgets less. */
  ease: number;
  /** How fast practice, or time, works. */
  pace: number;
}

export const DAY_SECONDS = 86_400;

/** A standard normal number (Box & Muller 1958, Annals of Mathematical Statistics 29, 610-611). */
export function normal(random: Random): number {
  return Math.sqrt(-2 * Math.log(1 - random.next())) * Math.cos(2 * Math.PI * random.next());
}

/**
 * Wickelgren's power law: chance = lambda (1 + beta t)^-psi at t since the latest practice, as Wixted & Carpenter
 * (2007), Psychological Science 18(2), 133-134, give it (from memory). Practice takes lambda a part of its way to 1 and
 * lowers psi by a part that is the larger the more was forgotten, in the spirit of Wickelgren (1974), Memory &
 * Cognition 2, 775-780, for whom a trace grows less fragile with time: these two steps, and all numbers, are our choice.
 */
export function powerLaw(name: string, median: { psi: number; spread: number; toughening: number }): Law {
  return {
    name,
    trace(random, writtenAt, student) {
      const beta = 40 / DAY_SECONDS;
      const toughening = median.toughening * Math.exp(0.2 * student.pace);
      let psi = median.psi * Math.exp(median.spread * normal(random) - 0.15 * student.ease);
      let lambda = 0.9;
      let last = writtenAt;
      const chance = (at: number): number => lambda * (1 + beta * Math.max(0, at - last)) ** -psi;
      return {
        chance,
        practise(at) {
          psi *= 1 - toughening * (1 - chance(at));
          lambda += 0.3 * (1 - lambda);
          last = at;
        },
      };
    },
  };
}

/**
 * Exponential with a spacing effect: of the many elements of a situation a share is at hand; practice ties 9 in 10 of
 * those at hand that are not yet tied to the answer; elements come to hand and leave at random, so that the part tied
 * among those at hand falls as e^-kt towards the part tied among all. Chance = part tied of those at hand. Practice
 * when little is at hand anew ties little: hence the spacing effect.
 *
 * Source: the fluctuation theory of Estes (1955), Psychological Review 62, 145-154 and 369-377 (from memory). All
 * numbers are our choice.
 */
export function exponentialLaw(
  name: string,
  median: { share: number; shareSpread: number; ratePerDay: number; rateSpread: number },
): Law {
  const middle = Math.log(median.share / (1 - median.share));
  return {
    name,
    trace(random, writtenAt, student) {
      const logit = middle + median.shareSpread * normal(random) + 0.3 * student.ease;
      const pace = median.rateSpread * normal(random) + 0.2 * student.pace;
      return fluctuation(
        writtenAt,
        1 / (1 + Math.exp(-logit)),
        (median.ratePerDay / DAY_SECONDS) * Math.exp(pace),
      );
    },
  };
}

const TIED = 0.9;

function fluctuation(writtenAt: number, share: number, rate: number): Trace {
  let atHand = TIED;
  let away = 0;
  let last = writtenAt;
  const mean = (): number => share * atHand + (1 - share) * away;
  const left = (at: number): number => Math.exp(-rate * Math.max(0, at - last));
  return {
    chance: (at) => mean() + (atHand - mean()) * left(at),
    practise(at) {
      const [all, part] = [mean(), left(at)];
      atHand = all + (atHand - all) * part;
      away = all + (away - all) * part;
      atHand += TIED * (1 - atHand);
      last = at;
    },
  };
}

/**
 * Exponential with a half-life: chance = 2^(-t / h) at t since the latest practice, which lengthens h the more, the
 * more was forgotten. Plain exponential forgetting; how h grows is our choice, after Bjork & Bjork (1992), for whom
 * practice adds the more to storage the harder it is to retrieve. All numbers are our choice.
 */
export function halfLifeLaw(name: string, median: { days: number; spread: number; growth: number }): Law {
  return {
    name,
    trace(random, writtenAt, student) {
      let halfLife =
        median.days * DAY_SECONDS * Math.exp(median.spread * normal(random) + 0.2 * student.ease);
      const growth = median.growth * Math.exp(0.3 * normal(random) + 0.1 * student.pace);
      let last = writtenAt;
      const chance = (at: number): number => 2 ** (-Math.max(0, at - last) / halfLife);
      return {
        chance,
        practise(at) {
          halfLife *= 1 + growth * (1 - chance(at));
          last = at;
        },
      };
    },
  };
}

/**
 * Power law over all presentations: activation M = N^c T^-d over N of them, with T the mean of their ages weighted by
 * age^-x, and d = b + m × the mean of 1 / ln(lag + e) over the lags between them; chance 1 / (1 + e^((tau - M) / s)).
 *
 * Source: the predictive performance equation of Walsh, Gluck, Gunzelmann, Jastrzembski & Krusmark (2018), Cognitive
 * Science 42(S3), 644-691; the equations, c = 0.1 and x = 0.6 from memory. b = 0.077, m = 0.080 and s = 0.041 were
 * fitted to the gaps and gains of tests/data/spacing.ts with two presentations; tau and the spreads are our choice.
 */
export const ALL_AGES_LAW: Law = {
  name: 'power law over all presentations',
  trace(random, writtenAt, student) {
    const b = 0.077 * Math.exp(0.15 * normal(random) + 0.05 * student.pace);
    const m = 0.08 * Math.exp(0.25 * normal(random));
    const tau = 0.42 + 0.05 * normal(random) - 0.02 * student.ease;
    return allAges(writtenAt, { b, m, tau, s: 0.041 });
  },
};

function allAges(writtenAt: number, { b, m, tau, s }: Record<'b' | 'm' | 'tau' | 's', number>): Trace {
  const times = [writtenAt];
  let lags = 0;
  return {
    chance(at) {
      const decay = times.length > 1 ? b + (m * lags) / (times.length - 1) : b;
      let weights = 0;
      let ages = 0;
      for (const time of times) {
        const age = Math.max(1, at - time);
        weights += age ** -0.6;
        ages += age ** -0.6 * age;
      }
      const activation = times.length ** 0.1 * (ages / weights) ** -decay;
      return 1 / (1 + Math.exp((tau - activation) / s));
    },
    practise(at) {
      lags += 1 / Math.log(Math.max(0, at - times.at(-1)!) + Math.E);
      times.push(at);
    },
  };
}

/** The laws whose marks are goals. */
export const POWER_LAW = powerLaw('power law', { psi: 0.7, spread: 0.65, toughening: 0.2 });
export const EXPONENTIAL_LAW = exponentialLaw('exponential law', {
  share: 0.12,
  shareSpread: 0.8,
  ratePerDay: 0.6,
  rateSpread: 0.5,
});

/** Shown beside them. */
export const HALF_LIFE_LAW = halfLifeLaw('half-life', { days: 0.7, spread: 0.85, growth: 0.35 });

/**
 * What lib/recall leaves to choice (WAITING in next-item.ts, and that the last turn is foreseen) was chosen on these
 * settings, with other students than those reported.
 */
export const DEVELOPMENT_LAWS: readonly Law[] = [
  powerLaw('power 1', { psi: 0.8, spread: 0.5, toughening: 0.15 }),
  powerLaw('power 2', { psi: 0.8, spread: 0.8, toughening: 0.15 }),
  halfLifeLaw('half-life 1', { days: 0.5, spread: 0.7, growth: 0.25 }),
  halfLifeLaw('half-life 2', { days: 0.5, spread: 1, growth: 0.25 }),
  exponentialLaw('exponential 1', { share: 0.1, shareSpread: 0.6, ratePerDay: 0.5, rateSpread: 0.4 }),
  exponentialLaw('exponential 2', { share: 0.05, shareSpread: 1, ratePerDay: 0.5, rateSpread: 0.6 }),
];
