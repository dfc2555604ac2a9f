import { readFileSync } from 'node:fs';
import { join } from 'node:path';

/** A meaning: the words that have it, what it is in a sentence, and which other meanings it points to. */
interface Synset {
  words: string[];
  gloss: string;
  linked: string[];
}

const FILES = [
  ['noun', 'n'],
  ['verb', 'v'],
  ['adj', 'a'],
  ['adv', 'r'],
] as const;

/**
 * Texts of WordNet 3.0: one for each meaning, holding its words, its gloss and the words of the meanings that it
 * points to. Format: wndb(5WN), "WordNet database files".
 * @param folder unpacked wordnet-base of Debian's
 */
export function wordnetTexts(folder: string): { words: string; gloss: string; linked: string }[] {
  const synsets = new Map<string, Synset>();
  for (const [file, letter] of FILES) {
    const lines = readFileSync(join(folder, 'usr/share/wordnet', `data.${file}`), 'utf8').split('\n');
    for (const line of lines) {
      if (/^\d/.test(line)) synsets.set(letter + line.slice(0, 8), synsetOf(line));
    }
  }
  return [...synsets.values()].map(({ words, gloss, linked }) => ({
    words: words.join('. '),
    gloss,
    linked: linked.flatMap((id) => synsets.get(id)?.words ?? []).join('. '),
  }));
}

function synsetOf(line: string): Synset {
  const [data = '', gloss = ''] = line.split(' | ');
  const fields = data.split(' ');
  const count = parseInt(fields[3] ?? '', 16);
  const words = Array.from({ length: count }, (_, i) => readable(fields[4 + 2 * i] ?? ''));
  const first = 4 + 2 * count;
  const pointers = Array.from({ length: Number(fields[first]) }, (_, i) => {
    const [, offset = '', letter = ''] = fields.slice(first + 1 + 4 * i, first + 4 + 4 * i);
    return (letter === 's' ? 'a' : letter) + offset;
  });
  return { words, gloss, linked: pointers };
}

/** "deep-water_wave(a)" as it is written elsewhere. */
const readable = (word: string): string => word.replace(/\(\w+\)$/, '').replace(/_/g, ' ');
