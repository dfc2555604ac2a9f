/**
 * The few numbers of the topic match: round ones from the middle of a flat optimum on a textbook's sections and on
 * the training parts of two labelled dictionaries, so that moving any of them by half changes little. See
 * docs/method.md.
 */

/** How much a word counts by where in the syllabus it stands. */
export const FIELD_WEIGHTS = { title: 3, statements: 2, ancestors: 1 } as const;

/** How much a word of a tagged passage counts beside that. */
export const TAGGED_WEIGHT = 0.7;

/** How far a topic's length discounts its words: 0 not at all, 1 in full. */
export const LENGTH_DISCOUNT = 0.6;

/** A word's weight within a topic at which half of its evidence is reached. */
export const TOPIC_SATURATION = 4;

/** A word's weight within a passage at which half of its evidence is reached. */
export const PASSAGE_SATURATION = 2;

/** How much a word counts by where in the passage it stands. */
export const PASSAGE_WEIGHTS = { text: 1, heading: 2, title: 2 } as const;

/** What a pair of words adds beside its two words. */
export const PAIR_WEIGHT = 0.75;

/** How much more a word counts that is rare in English: its rarity to this power. */
export const RARITY_POWER = 0.75;

/** A topic with topics below it stands back a little, so that a leaf wins a tie. */
export const PARENT_STEP = 0.3;

/** How much nearness in meaning counts beside shared words, for a cosine of 1. */
export const MEANING_WEIGHT = 3;

/** The topic's own words count in its meaning like so many tagged passages. */
export const OWN_MEANING = 3;

/** The mean of the topics counts in the mean of passages like so many tagged passages. */
export const MEAN_MEANING = 20;

/** How much of a tagged passage is read, in characters: its subject shows by then, and a few long ones cost no time. */
export const TAGGED_READ = 2000;

/**
 * From this cosine on, a topic is suggested that shares no word with the passage; from a higher one where the
 * passage has few words, since their direction is then a matter of chance.
 */
export const NEAR_ENOUGH = 0.12;

/** The part of a text's meaning that lies in the direction of English in general, on average. */
export const GENERAL_PART = 0.45;

/** Chances fall the more sharply the less the scores are spread and the lower the best one is. See chance.ts. */
export const SHARPNESS = 2.7;
export const SPREAD_POWER = 0.22;
export const BEST_POWER = 0.42;
export const LEAST_SPREAD = 0.05;
export const LEAST_BEST = 0.3;

/** What speaks for a passage's lying inside the syllabus, as log odds, and from where on it looks outside. */
export const INSIDE = { course: 36, words: 1.3, least: -0.5 } as const;
