import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { isChoice } from '#lib/recall/marks.ts';
import { marksForUncovered, uncoverSteps } from '#lib/recall/uncover-steps.ts';

describe('word by word', () => {
  it.each([
    ['falls with depth', ['falls ', 'with ', 'depth']],
    ['is $c = \\sqrt{g h}$, in shallow water', ['is ', '$c = \\sqrt{g h}$, ', 'in ', 'shallow ', 'water']],
    ['\\(f = 2 \\Omega \\sin \\phi\\)', ['\\(f = 2 \\Omega \\sin \\phi\\)']],
    ['costs $5 a day', ['costs ', '$5 ', 'a ', 'day']],
    ['  two\nlines', ['  two\n', 'lines']],
    ['\\(a\\)\\(b\\) c', ['\\(a\\)', '\\(b\\)', ' c']],
  ])('%s', (text, steps) => {
    expect(uncoverSteps(text, 'word')).toEqual(steps);
  });
});

describe('clause by clause', () => {
  it.each([
    ['warm water rises, cold water sinks', ['warm water rises, ', 'cold water sinks']],
    [
      'Salt stays behind. The rest, denser now, sinks.',
      ['Salt stays behind. ', 'The rest, ', 'denser now, ', 'sinks.'],
    ],
    ['some ions, e.g. sodium, stay', ['some ions, ', 'e.g. sodium, ', 'stay']],
    ['about 1,000.5 kg – no more', ['about 1,000.5 kg – ', 'no more']],
    [
      'the speed is $c = \\sqrt{g h}$, which grows with depth',
      ['the speed is ', '$c = \\sqrt{g h}$, ', 'which grows with depth'],
    ],
    ['one clause', ['one clause']],
  ])('%s', (text, steps) => expect(uncoverSteps(text, 'clause')).toEqual(steps));
});

it('never loses or adds a character, and has no blank step unless the text is blank', () => {
  const anyText = fc.array(
    fc.constantFrom(
      'wave',
      ' ',
      ', ',
      '. ',
      '$x^2$',
      '\\(y\\)',
      '$$z$$',
      '\n',
      '$',
      ' – ',
      'e.g. ',
      ')',
      '深い',
    ),
    { maxLength: 14 },
  );
  fc.assert(
    fc.property(anyText, fc.constantFrom('word', 'clause'), (parts, size) => {
      const text = parts.join('');
      const steps = uncoverSteps(text, size);
      expect(steps.join('')).toBe(text);
      if (text.trim() !== '') expect(steps.every((step) => step.trim() !== '')).toBe(true);
    }),
  );
});

it('takes a text of twenty thousand characters', () => {
  const text = 'the tide turns, and turns again; '.repeat(600);
  expect(uncoverSteps(text, 'clause').join('')).toBe(text);
  expect(uncoverSteps(text, 'word')).toHaveLength(3600);
});

describe('suggested marks', () => {
  it.each([
    [0, 6, 1, 1],
    [1, 6, 1, 0.5],
    [5, 6, 1, 0.5],
    [6, 6, 1, 0],
    [1, 6, 4, 3],
    [3, 6, 4, 2],
    [5, 6, 4, 1],
    [1, 1, 2, 0],
  ])('%s of %s steps uncovered, out of %s: %s', (uncovered, steps, outOf, marks) =>
    expect(marksForUncovered(uncovered, steps, outOf)).toBe(marks),
  );

  it('can be given, and never rise with what is uncovered', () => {
    fc.assert(
      fc.property(fc.integer({ min: 1, max: 30 }), fc.integer({ min: 1, max: 20 }), (steps, outOf) => {
        const all = Array.from({ length: steps + 1 }, (_, n) => marksForUncovered(n, steps, outOf));
        expect(all.every((marks) => isChoice(marks, outOf))).toBe(true);
        expect(all.toSorted((a, b) => b - a)).toEqual(all);
      }),
    );
  });
});
