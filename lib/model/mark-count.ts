import { z } from 'zod';

/** The most marks that a problem or a paper is out of. */
export const MOST_MARKS = 1000;

/** A number of marks: halves are the smallest that are given. */
export const MarkCount = z.number().nonnegative().multipleOf(0.5).max(MOST_MARKS);

/** For refine: nothing gets more marks than there are. */
export const withinMarks = ({ marks, outOf }: { marks: number | null; outOf: number }): boolean =>
  marks === null || marks <= outOf;
