import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import {
  type LineText,
  joinedText,
  movedEnd,
  partsOf,
  splitAt,
  suggestedEnd,
  textOfLine,
  wholeAt,
} from '#lib/notes/lines/line-text.ts';

/** A line written with | where its lead ends. */
const line = (marked: string): LineText => ({ text: marked.replace('|', ''), leadEnd: marked.indexOf('|') });
const marked = ({ text, leadEnd }: LineText): string => `${text.slice(0, leadEnd)}|${text.slice(leadEnd)}`;

describe('a line as one text', () => {
  test('lead and rest come apart as they were put together', () => {
    const words = fc.string({ maxLength: 12, unit: 'grapheme' }).map((text) => text.trim());
    fc.assert(
      fc.property(words, words, (lead, rest) => {
        const parts = partsOf(textOfLine({ lead, rest }));
        // A rest alone is shown as what it is: something that is not covered.
        expect(parts).toEqual(lead === '' ? { lead: '', rest } : { lead, rest });
      }),
    );
  });
});

describe('where the lead ends while typing', () => {
  // ^ stands for the caret afterwards.
  test.each([
    ['Tides| come', 'Spring ^Tides come', 'Spring Tides| come'],
    ['Tides| come', 'Tides come twice^', 'Tides| come twice'],
    ['Tides| come', 'T^s come', 'Ts| come'],
    ['Tides| come', 'T^ome', 'T|ome'],
    ['Tides| come', 'Tides at sea^ come', 'Tides| at sea come'],
    ['a| a', 'a ^a a', 'a a| a'],
    ['a| a', 'a a ^a', 'a| a a'],
    ['Tides|', 'Tides at sea^', 'Tides at sea|'],
    ['|', 'a^', 'a|'],
    ['Deep water|', 'Deep water: fast^', 'Deep water:| fast'],
    ['Tides| come', '^', '|'],
  ])('%s becomes “%s”: %s', (before, drawn, then) => {
    const after = drawn.replace('^', '');
    const leadEnd = movedEnd(line(before), after, drawn.indexOf('^'));
    expect(marked({ text: after, leadEnd })).toBe(then);
  });

  test('it stays within the text, whatever is typed', () => {
    fc.assert(
      fc.property(fc.string(), fc.nat(), fc.string(), fc.nat(), (text, at, after, caret) => {
        const leadEnd = text.length === 0 ? 0 : at % (text.length + 1);
        const end = movedEnd({ text, leadEnd }, after, caret % (after.length + 1));
        expect(end).toBeGreaterThanOrEqual(0);
        expect(end).toBeLessThanOrEqual(after.length);
      }),
    );
  });

  test('words that are inserted before or after it leave what it parts as it was', () => {
    const word = fc.stringMatching(/^[a-c]{1,3}$/);
    fc.assert(
      fc.property(word, word, word, (lead, rest, more) => {
        const before = textOfLine({ lead, rest });
        const first = `${more} ${before.text}`;
        expect(partsOf({ text: first, leadEnd: movedEnd(before, first, more.length + 1) })).toEqual({
          lead: `${more} ${lead}`,
          rest,
        });
        const last = `${before.text} ${more}`;
        expect(partsOf({ text: last, leadEnd: movedEnd(before, last, last.length) })).toEqual({
          lead,
          rest: `${rest} ${more}`,
        });
      }),
      { numRuns: 1000 },
    );
  });
});

test('a colon ends the lead, but none within a formula or a time', () => {
  expect(suggestedEnd('Deep water: fast: very')).toBe(11);
  expect(suggestedEnd('at 10:30 the tide')).toBeNull();
  expect(suggestedEnd(String.raw`The map \(f: A \to B\) is`)).toBeNull();
  expect(suggestedEnd(String.raw`The map \(f: A \to B\): onto`)).toBe(23);
  expect(suggestedEnd('ends with:  ')).toBeNull();
});

test('a place is moved out of formulas and of characters in several parts', () => {
  const text = String.raw`a \(x^2\) 👩‍🚀 e`;
  expect(wholeAt(text, 4)).toBe(9);
  expect(wholeAt(text, 2)).toBe(2);
  expect(text.slice(0, wholeAt(text, 12)).endsWith('👩‍🚀')).toBe(true);
});

describe('Enter and Backspace', () => {
  test.each([
    ['Tides| come in', 5, 'Tides|', 'come in|'],
    ['Tides| come in', 2, 'Ti|', 'des| come in'],
    ['Tides| come in: twice', 10, 'Tides| come', 'in:| twice'],
    ['Tides| come', 0, '|', 'Tides| come'],
    ['Tides| come', 10, 'Tides| come', '|'],
  ])('%s at %i', (before, at, first, second) => {
    expect(splitAt(line(before), at).map(marked)).toEqual([first, second]);
  });

  test('no word is lost by splitting, and joining brings the words back', () => {
    const text = fc.stringMatching(/^[a-z:]{1,5}( [a-z:]{1,5}){0,5}$/);
    fc.assert(
      fc.property(text, fc.nat(), fc.nat(), (text, leadEnd, at) => {
        const before = { text, leadEnd: leadEnd % (text.length + 1) };
        const place = at % (text.length + 1);
        const [first, second] = splitAt(before, place);
        expect((first.text + second.text).replace(/ /g, '')).toBe(text.replace(/ /g, ''));
        const joined = joinedText(first, second);
        expect(joined.text.split(/\s+/).join('')).toBe(text.split(/\s+/).join(''));
        for (const { text, leadEnd } of [first, second, joined])
          expect(leadEnd).toBeLessThanOrEqual(text.length);
      }),
    );
  });

  test('joined to a line with a rest, all of the second is covered', () => {
    expect(marked(joinedText(line('Tides| come'), line('Ice| floats')))).toBe('Tides| come Ice floats');
    expect(marked(joinedText(line('Tides|'), line('Ice| floats')))).toBe('Tides Ice| floats');
    expect(marked(joinedText(line('|'), line('Ice| floats')))).toBe('Ice| floats');
  });
});
