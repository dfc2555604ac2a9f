import { statSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { meaningOf, stemWeights } from '#lib/syllabus/match/passage-terms.ts';
import { Stems } from '#lib/syllabus/match/terms.ts';
import { dot } from '#lib/syllabus/match/vector.ts';
import { DIMENSIONS, wordVectors } from '#lib/syllabus/match/word-vectors.ts';

const stems = new Stems();
const meaning = (text: string) => meaningOf(stemWeights(text, stems));
const nearness = (a: string, b: string) => dot(meaning(a), meaning(b));

describe('word vectors', () => {
  it('are at most 1 MB of data', () => {
    expect(statSync('assets/match/word-vectors.json').size).toBeLessThanOrEqual(1_000_000);
  });

  it('put words near each other that mean something alike', () => {
    // From memory: pairs that any thesaurus has under one head, against words of another head.
    for (const [word, like, unlike] of [
      ['ship', 'boat', 'polynomial'],
      ['triangle', 'hypotenuse', 'harbour'],
      ['plant', 'flower', 'equation'],
      ['acid', 'solution', 'parliament'],
      ['melody', 'chord', 'glacier'],
    ] as const) {
      expect(nearness(word, like), `${word}, ${like}`).toBeGreaterThan(nearness(word, unlike) + 0.1);
    }
  });

  it('are of length 1 times the rarity of the word', () => {
    for (const stem of ['wave', 'ocean', 'genu']) {
      const vector = new Float32Array(DIMENSIONS);
      wordVectors().addTo(vector, stem, 1);
      expect(Math.sqrt(dot(vector, vector))).toBeCloseTo(wordVectors().rarityOf(stem), 5);
    }
  });

  it('know that technical words are rarer than plain ones', () => {
    const rarity = (stem: string) => wordVectors().rarityOf(stem);
    expect(rarity('water')).toBeLessThan(rarity('wave'));
    expect(rarity('wave')).toBeLessThan(rarity('logarithm'));
    expect(rarity('zzyzx')).toBe(1);
  });

  it('say nothing of words they do not hold', () => {
    expect(meaning('zzyzx qwrtp').every((x) => x === 0)).toBe(true);
  });
});
