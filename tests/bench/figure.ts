/** One measured figure, as `.output/bench.json` holds it. */
export interface Figure {
  /** Starts with the folder in lib that it speaks of: "recall/rank-5000-ms". */
  name: string;
  value: number;
  unit: string;
  /** What it is compared to, in words with its value: "empty extension page 31 ms". */
  against: string | null;
  /** The value divided by what it is compared to. */
  ratio: number | null;
  /** "at most 150 ms more" */
  goal: string | null;
  /** Null where there is no goal yet. */
  met: boolean | null;
}

/** What a bench file exports as `figures`. */
export type Figures = Figure[] | (() => Promise<Figure[]> | Figure[]);

/** At most (or at least) so much in all, or so much more than what it is compared to. */
export type Goal = ({ atMost: number } | { atLeast: number }) & { more?: boolean };

interface Measured {
  name: string;
  value: number;
  unit: 'ms' | 'kB' | '%';
  against?: { what: string; value: number };
  goal?: Goal;
}

/** A figure with its ratio and whether its goal is met. */
export function figure({ name, value, unit, against, goal }: Measured): Figure {
  const beside = against ? `${against.what} ${brief(against.value)} ${unit}` : null;
  const counted = goal?.more ? value - (against?.value ?? 0) : value;
  return {
    name,
    value: Number(value.toPrecision(4)),
    unit,
    against: beside,
    ratio: against ? Number((value / against.value).toPrecision(3)) : null,
    goal: goal ? inWords(goal, unit) : null,
    met: goal ? isMet(goal, counted) : null,
  };
}

const isMet = (goal: Goal, value: number): boolean =>
  'atMost' in goal ? value <= goal.atMost : value >= goal.atLeast;

function inWords(goal: Goal, unit: string): string {
  const bound = 'atMost' in goal ? `at most ${goal.atMost}` : `at least ${goal.atLeast}`;
  // A difference of percentages is in points.
  const measure = unit === '%' && goal.more ? 'points' : unit;
  return `${bound} ${measure}${goal.more ? ' more' : ''}`;
}

/** A number as short as it can be read: three digits, or the whole part where that is longer. */
export function brief(value: number): string {
  return value >= 100 ? value.toFixed(0) : String(Number(value.toPrecision(3)));
}
