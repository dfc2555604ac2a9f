/** What a campaign found. */
export interface Finding {
  /** Where it ran, such as a browser's name. */
  where: string;
  tried: number;
  /** How often what must hold did not hold. */
  failed: number;
  /** What went wrong, in words; at most a few. */
  examples: string[];
}

/** A long run that is bounded in time. Its file exports one. */
export interface Campaign {
  name: string;
  /** What must hold, every time. */
  holds: string;
  run(): Promise<Finding[]>;
}
