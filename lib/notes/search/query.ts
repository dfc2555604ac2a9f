import { STOP_WORDS } from '../../syllabus/match/stop-words.ts';
import type { WordReader } from './read-words.ts';

/** A word that is looked for. */
export interface QueryWord {
  word: string;
  /** It and its neighbours as one word, where a hyphen joins them. */
  joined: string | null;
  /** Still being typed: what begins with it counts too. */
  isOpen: boolean;
  /** A little word such as "the": what holds it ranks higher, but nothing has to hold it. */
  isOptional: boolean;
  /** In quotes: no other form of it will do. */
  isExact: boolean;
}

export interface Query {
  words: QueryWord[];
  /** What stood in quotes, in the form of {@link phraseOf}. */
  phrases: string[];
}

/** The longest text that is looked for, in UTF-16 units, and how many different words of it count. */
const LONGEST = 1000;
const MOST_WORDS = 24;

const QUOTES = /["“”„]/;

/** Words one after another, as phrases are looked for in documents: each between two spaces. */
export const phraseOf = (words: readonly string[]): string => ` ${words.join(' ')} `;

/**
 * Reads what a student looks for. Words between two quotation marks stand together; the last word counts as being typed
 * while nothing follows it. Little words count where there is nothing else.
 */
export function readQuery(text: string, reader: WordReader): Query {
  const parts = text.slice(0, LONGEST).split(QUOTES);
  const words = new Map<string, QueryWord>();
  const phrases: string[] = [];
  parts.forEach((part, i) => {
    // A quotation mark without its partner quotes nothing.
    const isPhrase = i % 2 === 1 && i < parts.length - 1;
    const isLast = i === parts.length - 1;
    const read = wordsIn(part, isPhrase, isLast, reader);
    if (isPhrase && read.length > 0) phrases.push(phraseOf(read.map(({ word }) => word)));
    for (const one of read)
      if (words.size < MOST_WORDS) words.set(one.word, merged(words.get(one.word), one));
  });
  const all = [...words.values()];
  if (all.every(({ isOptional }) => isOptional)) all.forEach((one) => (one.isOptional = false));
  return { words: all, phrases };
}

function wordsIn(text: string, isExact: boolean, isLast: boolean, reader: WordReader): QueryWord[] {
  const found: (QueryWord & { start: number })[] = [];
  reader.read(text, (word, start, end, isJoined) => {
    if (isJoined) {
      for (const part of found) if (part.start >= start && part.start < end) part.joined = word;
      return;
    }
    const isOpen = isLast && !isExact && end === text.length;
    const isOptional = !isExact && !isOpen && STOP_WORDS.has(word);
    found.push({ word, joined: null, isOpen, isOptional, isExact, start });
  });
  return found.map(({ start: _, ...word }) => word);
}

/** The same word twice: it counts as strictly as it does once, and is still being typed if it is at the end. */
const merged = (before: QueryWord | undefined, word: QueryWord): QueryWord =>
  before
    ? {
        ...word,
        joined: before.joined ?? word.joined,
        isExact: before.isExact || word.isExact,
        isOptional: before.isOptional && word.isOptional,
      }
    : word;
