/** A part that could stand in a new paper: one of an earlier paper, or an own problem. */
export interface PartOffer {
  id: string;
  /** Parts of one question share it. */
  questionId: string;
  /** All parts of its question so marked come together or not at all. */
  together: boolean;
  /** Whole marks, at least 1. */
  marks: number;
  minutes: number;
  /** Which part of its marks each topic has, from 0 to 1, together at most 1. */
  topics: Readonly<Record<string, number>>;
  /** Whole days since the student saw it; null where it was never seen. */
  daysUnseen: number | null;
  /** What it asks, by which near copies are told. */
  text: string;
}

/** What the student wants of a paper. */
export interface PaperWish {
  /** Whole marks in all. */
  marks: number;
  /** So many marks more or less are allowed as well; 0 for exactly `marks`. */
  marksTolerance: number;
  /** Minutes in all, at most; null where time does not count. */
  minutes: number | null;
  /** What each topic should have of the marks: of the exam, or of the mend list. Weights, of any sum above 0. */
  shares: Readonly<Record<string, number>>;
  /** Nothing seen in so many days; 0 for no such wish. */
  notSeenForDays: number;
  /** The order of the parts: as they were offered (paper by paper), or topic by topic in the order of `shares`. */
  order: 'as offered' | 'by topic';
  /** Whole number: another one gives another of equally good papers. */
  seed: number;
}
