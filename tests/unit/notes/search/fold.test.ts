import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { folded, stemOf } from '#lib/notes/search/fold.ts';

// Examples of Porter (1980), An algorithm for suffix stripping, Program 14(3), 130-137: the family of CONNECT from the
// introduction, and from the steps those that no later step changes again. From memory of the paper.
test.each([['connect', 'connected', 'connecting', 'connection', 'connections']])(
  'the forms of one word have one stem',
  (...forms) => {
    expect(new Set(forms.map(stemOf))).toEqual(new Set(['connect']));
  },
);

test.each([
  ['caresses', 'caress'],
  ['ponies', 'poni'],
  ['ties', 'ti'],
  ['cats', 'cat'],
  ['feed', 'feed'],
  ['plastered', 'plaster'],
  ['bled', 'bled'],
  ['motoring', 'motor'],
  ['sing', 'sing'],
  ['hopping', 'hop'],
  ['falling', 'fall'],
  ['filing', 'file'],
  ['happy', 'happi'],
  ['sky', 'sky'],
  ['relational', 'relat'],
  ['vietnamization', 'vietnam'],
  ['triplicate', 'triplic'],
  ['formalize', 'formal'],
  ['hopefulness', 'hope'],
  ['goodness', 'good'],
  ['revival', 'reviv'],
  ['airliner', 'airlin'],
  ['adjustable', 'adjust'],
  ['replacement', 'replac'],
  ['adoption', 'adopt'],
  ['effective', 'effect'],
  ['probate', 'probat'],
  ['rate', 'rate'],
  ['controlling', 'control'],
  ['rolling', 'roll'],
  ['generalizations', 'gener'],
  ['oscillators', 'oscil'],
])('%s has the stem %s', (word, stem) => {
  expect(stemOf(word)).toBe(stem);
});

test('British and American spellings are forms of one word', () => {
  expect(stemOf('colour')).toBe(stemOf('colors'));
  expect(stemOf('polarisation')).toBe(stemOf('polarization'));
});

test('words of other alphabets, numbers and symbols are their own stems', () => {
  for (const word of ['θαλασσα', 'h2o', '24.84', 'море']) expect(stemOf(word)).toBe(word);
});

describe('one form for what Unicode writes in several ways', () => {
  // Source: Unicode Standard Annex #15, Unicode Normalization Forms, figures 3 to 6: a singleton, composites, a
  // ligature, a superscript, and canonical and compatibility composites in one.
  test.each([
    ['\u212b', '\u00c5', 'singleton: angstrom sign'],
    ['\u2126', '\u03a9', 'singleton: ohm sign'],
    ['\u00c5', 'A\u030a', 'composite'],
    ['\u00f4', 'o\u0302', 'composite'],
    ['\u1e69', 's\u0323\u0307', 'two marks'],
    ['\u1e0b\u0323', 'd\u0323\u0307', 'marks in another order'],
    ['q\u0307\u0323', 'q\u0323\u0307', 'marks that no letter is composed with'],
    ['\ufb01', 'fi', 'ligature'],
    ['2\u2075', '25', 'superscript'],
    ['\u1e9b\u0323', 's\u0323\u0307', 'long s with marks'],
  ])('%j and %j (%s)', (one, other) => {
    expect(folded(one)).toBe(folded(other));
  });

  test('case, as case folding has it', () => {
    expect(folded('MASSE')).toBe(folded('Maße'));
    expect(folded('ΘΆΛΑΣΣΑΣ')).toBe(folded('θάλασσας'));
    expect(folded('CO₂')).toBe('co2');
    expect(folded('Ｔｉｄｅ')).toBe('tide');
  });

  test('accents and vowel points may be left out; letters of Indic scripts keep their vowels', () => {
    expect(folded('Ferré')).toBe('ferre');
    expect(folded('مَدّ')).toBe('مد');
    expect(folded('की')).not.toBe(folded('कु'));
  });

  test('a symbol, its TeX command and its name are one', () => {
    for (const omega of ['ω', 'Ω', '\\omega', '\\Omega', 'omega', '𝜔']) expect(folded(omega)).toBe('omega');
    for (const root of ['√', '\\sqrt', 'sqrt']) expect(folded(root)).toBe('sqrt');
    expect(folded('\\mathrm')).toBe('');
    expect(folded('\\frac')).toBe('frac');
  });

  test('numbers: groups fall out, a comma is a point', () => {
    expect(folded('1,025')).toBe('1025');
    expect(folded('12,345,678')).toBe('12345678');
    expect(folded('9,81')).toBe('9.81');
    expect(folded('24.84')).toBe('24.84');
  });

  test('what is folded stays as it is, and holds no space', () => {
    fc.assert(
      fc.property(fc.stringMatching(/^[\p{L}\p{M}\p{N}]{1,6}$/u), (word) => {
        const once = folded(word);
        expect(folded(once)).toBe(once);
        expect(once).not.toMatch(/\s/);
      }),
    );
  });
});
