import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { wordOfCommand, wordOfSign } from '#lib/syllabus/match/maths-words.ts';
import { Stems, countStems, pairOf, plainText, termsOf } from '#lib/syllabus/match/terms.ts';

const terms = (text: string) => termsOf(plainText(text), new Stems());
const stems = (text: string): string[] => terms(text).map(({ stem }) => stem);
const pairs = (text: string): (string | null)[] =>
  terms(text).map((term, i, all) => pairOf(all[i - 1], term));

describe('terms', () => {
  it('are stems', () => {
    // M. F. Porter (1980), "An algorithm for suffix stripping", Program 14(3), 130-137: the family of CONNECT.
    for (const word of ['connected', 'connecting', 'connection', 'connections'])
      expect(stems(word)).toEqual(['connect']);
  });

  it('leave out stop words, command words and lone letters', () => {
    expect(stems('Explain how the waves of x are described, and state why')).toEqual(['wave', 'state']);
  });

  it('keep words whose verb commands but whose noun is a subject', () => {
    expect(stems('derive the derivative; determine a determinant')).toEqual(['deriv', 'determin']);
  });

  it('read British and American spellings alike', () => {
    for (const [british, american] of [
      ['linearise', 'linearize'],
      ['linearisation', 'linearization'],
      ['catalyses', 'catalyzes'],
      ['behaviour', 'behavior'],
      ['centre', 'center'],
    ] as const) {
      expect(stems(british)).toEqual(stems(american));
    }
  });

  it('read Greek letters, TeX and names alike', () => {
    for (const omega of ['ω', '\\omega', 'omega', 'Ω', '𝜔']) expect(stems(omega)).toEqual(['omega']);
    expect(stems('\\varphi ϕ φ phi')).toEqual(['phi', 'phi', 'phi', 'phi']);
    expect(stems('Δf')).toEqual(['delta']);
    expect(stems('\\(\\omega^2 = gk\\tanh(kh)\\)')).toEqual(['omega', 'gk', 'tanh', 'kh']);
    expect(stems('\\frac{\\partial u}{\\partial t}')).toEqual(stems('∂u/∂t'));
  });

  it('read short names of functions as the full ones', () => {
    expect(stems('sin \\sin sine')).toEqual(['sine', 'sine', 'sine'].map((word) => stems(word)[0]));
    expect(stems('∫')).toEqual(['integral']);
  });

  it('stand in pairs across at most two words without a subject, and never across punctuation', () => {
    expect(pairs('law of the sines')).toEqual([null, 'law sine']);
    expect(pairs('the law. Sines')).toEqual([null, null]);
    expect(pairs('law that they all have sines')).toEqual([null, null]);
  });

  it('know their place and how the student reads them', () => {
    const text = 'Swells at \\omega';
    expect(terms(text).map(({ surface }) => surface)).toEqual(['Swells', 'ω']);
    expect(terms(text).map(({ start, end }) => text.slice(start, end))).toEqual(['Swells', '\\omega']);
  });

  it('are found in other scripts', () => {
    expect(stems('волны океана')).toEqual(['волны', 'океана']);
    expect(stems('ωκεανός')).toHaveLength(1);
  });
});

describe('maths words', () => {
  it('are none for names of object properties and for commands that only set type', () => {
    expect(['constructor', 'toString', 'wave'].map(wordOfSign)).toEqual([null, null, null]);
    expect(['\\frac', '\\left', '\\constructor'].map(wordOfCommand)).toEqual([null, null, null]);
  });

  it('can be counted', () => {
    fc.assert(
      fc.property(
        fc.array(fc.constantFrom('Waves', 'wave', 'ω', '\\tanh', 'the', '.', '\n', 'état')),
        (words) => {
          const text = words.join(' ');
          const counted = Object.fromEntries(countStems(plainText(text), new Stems()));
          const found = Object.groupBy(stems(text), (stem) => stem);
          expect(counted).toEqual(
            Object.fromEntries(Object.entries(found).map(([k, all]) => [k, all?.length])),
          );
        },
      ),
    );
  });
});
