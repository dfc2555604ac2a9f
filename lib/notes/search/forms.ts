import type { QueryWord } from './query.ts';
import type { Entry, Vocabulary } from './vocabulary.ts';

/** How near a word of the deck is to the one that is looked for: what is exact ranks above all else. */
export const TIER = { misspelt: 1, form: 2, exact: 3 } as const;

/** A word of the deck that answers one that is looked for. */
export interface Form {
  entry: Entry;
  tier: number;
  /** Within its tier, 0 to 1. */
  weight: number;
}

/** As in MiniSearch: what a letter more takes from a beginning. */
const LETTER_MORE = 0.3;

/** Words as long have few neighbours that are words of their own: "salinty" is "salinity", but "have" is not "wave". */
const LONG = 7;

/**
 * The words of the deck that answer one that is looked for: itself, other forms of it, words that begin with it while
 * it is being typed. Words that it may be a misspelling of, or they of it, count where there is none of these, where
 * `alsoNear` says so and, one edit apart, for long words.
 */
export function formsOf(wanted: QueryWord, vocabulary: Vocabulary, alsoNear: boolean): Form[] {
  const forms = new Map<Entry, Form>();
  const add = (entry: Entry | undefined, tier: number, weight: number) => {
    if (entry && !forms.has(entry)) forms.set(entry, { entry, tier, weight });
  };
  add(vocabulary.get(wanted.word), TIER.exact, 1);
  if (wanted.joined !== null) add(vocabulary.get(wanted.joined), TIER.exact, 1);
  if (wanted.isExact) return [...forms.values()];
  for (const entry of vocabulary.withStemOf(wanted.word)) add(entry, TIER.form, 1);
  if (wanted.isOpen)
    for (const entry of vocabulary.startingWith(wanted.word))
      add(entry, TIER.form, beginningWeight(wanted.word.length, entry.word.length));
  const isKnown = forms.size > 0 && !alsoNear;
  for (const { entry, distance } of vocabulary.near(wanted.word)) {
    if (isKnown && (wanted.word.length < LONG || distance > 1)) break;
    // Whoever misspells a word misspells its other forms too.
    for (const kin of vocabulary.withStemOf(entry.word)) add(kin, TIER.misspelt, 1 / (1 + distance));
  }
  return [...forms.values()];
}

const beginningWeight = (typed: number, whole: number): number =>
  typed / (typed + LETTER_MORE * (whole - typed));
