/**
 * The few numbers of the topic match. The scoring is BM25 over fields (Robertson, Zaragoza & Taylor 2004, "Simple
 * BM25 extension to multiple weighted fields", CIKM, 42-49); the values are round ones from the middle of a flat
 * optimum on a textbook's sections, so that moving any of them by half changes little.
 */

/** How much a word counts by where in the syllabus it stands. */
export const FIELD_WEIGHTS = { title: 3, statements: 2, ancestors: 1, tagged: 0.5 } as const;
export type FieldName = keyof typeof FIELD_WEIGHTS;

/** How far a field's length discounts its words: 0 not at all, 1 in full. */
export const LENGTH_DISCOUNT = 0.75;

/** A word's weight within a topic at which half of its evidence is reached. */
export const TOPIC_SATURATION = 4;

/** A word's weight within the passage at which half of its evidence is reached. */
export const PASSAGE_SATURATION = 2;

/** How much a word counts by where in the passage it stands. */
export const PASSAGE_WEIGHTS = { text: 1, heading: 2, title: 2 } as const;

/** What a pair of words adds beside its two words. */
export const PAIR_WEIGHT = 0.75;

/** A topic with topics below it stands back a little, so that a leaf wins a tie. */
export const PARENT_DISCOUNT = 0.9;

/** Below this part of the evidence that the passage could give at most, it looks off the syllabus. */
export const OFF_SYLLABUS_BELOW = 0.15;

/** How much of a tagged passage is read, in characters: its subject shows by then, and a few long ones cost no time. */
export const TAGGED_READ = 2000;
