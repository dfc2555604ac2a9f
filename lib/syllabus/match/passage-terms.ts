import { countStems, pairOf, plainText, termsOf } from './terms.ts';
import type { Stems } from './terms.ts';
import { PASSAGE_SATURATION, PASSAGE_WEIGHTS } from './weights.ts';
import { DIMENSIONS, wordVectors } from './word-vectors.ts';
import { unit } from './vector.ts';

/** What is to be matched to a topic. */
export interface PassageInput {
  /** Plain text, formulas as TeX or as their characters. */
  text: string;
  /** Headings above it. */
  headings: readonly string[];
  /** The title of its page. */
  title: string;
}

/** A word or pair of words of a passage. */
export interface PassageTerm {
  /** How much it counts, from 0 up to 1 + PASSAGE_SATURATION: repeating a word adds less each time. */
  weight: number;
  /** How it first stands in the passage, for the student to read. */
  surface: string;
}

/** Terms by stem or pair of stems. */
export type Terms = Map<string, PassageTerm>;

/** The terms of a passage. */
export function passageTerms(passage: PassageInput, stems: Stems): Terms {
  const terms: Terms = new Map();
  addText(terms, passage.text, PASSAGE_WEIGHTS.text, stems);
  for (const heading of passage.headings) addText(terms, heading, PASSAGE_WEIGHTS.heading, stems);
  addText(terms, passage.title, PASSAGE_WEIGHTS.title, stems);
  for (const term of terms.values()) term.weight = saturated(term.weight);
  return terms;
}

/** The stems of a title, statement or tagged passage, each with how much it counts. */
export function stemWeights(text: string, stems: Stems): Map<string, number> {
  const weights = countStems(plainText(text), stems);
  for (const [stem, count] of weights) weights.set(stem, saturated(count));
  return weights;
}

/** The sum of the vectors of a text's words, rare ones first: its direction is what the text is about. */
export function vectorOf(weights: Iterable<readonly [stem: string, weight: number]>): Float32Array {
  const vectors = wordVectors();
  const sum = new Float32Array(DIMENSIONS);
  for (const [stem, weight] of weights) vectors.addTo(sum, stem, weight);
  return sum;
}

/** Where a text stands in the space of meanings, at length 1. */
export const meaningOf = (weights: Iterable<readonly [stem: string, weight: number]>): Float32Array =>
  unit(vectorOf(weights));

function addText(into: Terms, text: string, weight: number, stems: Stems): void {
  const plain = plainText(text);
  const terms = termsOf(plain, stems);
  terms.forEach((term, i) => {
    add(into, term.stem, weight, term.surface);
    const before = terms[i - 1];
    const pair = pairOf(before, term);
    if (pair && before) add(into, pair, weight, plain.slice(before.start, term.end).replace(/\s+/g, ' '));
  });
}

function add(into: Terms, key: string, weight: number, surface: string): void {
  const term = into.get(key);
  if (term) term.weight += weight;
  else into.set(key, { weight, surface });
}

const saturated = (weight: number): number =>
  (weight * (PASSAGE_SATURATION + 1)) / (weight + PASSAGE_SATURATION);
