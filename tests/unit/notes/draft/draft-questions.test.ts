import fc from 'fast-check';
import { describe, expect, it, test } from 'vitest';
import { blankQuestion, draftQuestions } from '#lib/notes/draft/draft-questions.ts';
import { sentencesOf } from '#lib/notes/draft/sentences.ts';

const only = (passage: string) => {
  const drafts = draftQuestions(passage);
  expect(drafts).toHaveLength(1);
  return drafts[0]!;
};

describe('sentences', () => {
  it('are not ended by what stands in a formula, nor by a line break', () => {
    const text = 'Waves run at\n\\( c = 1.5\\, f. \\) here. Then\nthey break! Why?';
    expect(sentencesOf(text).map((sentence) => sentence.text)).toEqual([
      'Waves run at \\( c = 1.5\\, f. \\) here.',
      'Then they break!',
      'Why?',
    ]);
  });

  test('lie in the text where they say, and none is blank', () => {
    fc.assert(
      fc.property(fc.string({ unit: 'grapheme', maxLength: 200 }), (text) => {
        for (const { text: sentence, from, to } of sentencesOf(text)) {
          expect(text.slice(from, to).replace(/\s+/g, ' ')).toBe(sentence);
          expect(sentence.trim()).not.toBe('');
        }
      }),
    );
  });
});

describe('drafts of questions', () => {
  it.each([
    [
      'A seiche is a standing wave in a closed basin.',
      'What is meant by a seiche?',
      'A standing wave in a closed basin',
    ],
    [
      'Salinity means the mass of dissolved salts in a kilogram of sea water.',
      'What is meant by salinity?',
      'The mass of dissolved salts in a kilogram of sea water',
    ],
    [
      'The layer in which density changes fast is called the pycnocline.',
      'What is meant by the pycnocline?',
      'The layer in which density changes fast',
    ],
    ['Such a standing wave is called a seiche.', 'What is meant by a seiche?', 'A standing wave'],
  ])('of a definition: %s', (sentence, prompt, answer) => {
    expect(only(sentence)).toEqual({ kind: 'definition', prompt, answer });
  });

  it.each([
    [
      'The speed of long waves depends on the depth alone.',
      'What does the speed of long waves depend on, and how?',
      'The speed of long waves depends on the depth alone.',
    ],
    [
      'If the water is shallow, all waves travel at one speed.',
      'What follows if the water is shallow?',
      'All waves travel at one speed',
    ],
  ])('of a rule: %s', (sentence, prompt, answer) => {
    expect(only(sentence)).toEqual({ kind: 'rule', prompt, answer });
  });

  it('of a formula: what stands on its left is asked for', () => {
    expect(only('Long waves travel at \\( c = \\sqrt{gh} \\).')).toEqual({
      kind: 'formula',
      prompt: 'State the formula for \\(c\\).',
      answer: '\\(c = \\sqrt{gh}\\)',
    });
  });

  it.each([
    ['a number put in', 'Here \\( c = 14.0\\ \\mathrm{m\\,s^{-1}} \\) holds.'],
    ['a chain of steps', 'So \\( a = b = c \\) in the end.'],
    ['no equation', 'Take \\( \\lambda \\) as given.'],
  ])('but not of %s', (_what, sentence) => {
    expect(draftQuestions(sentence)).toEqual([]);
  });

  it.each([
    ['Sound in sea water travels at about 1500 metres per second.', 'about 1500 metres per second'],
    ['The tide returns after 12.4 hours.', '12.4 hours'],
    ['Sea water holds 3.5 % of salt.', '3.5 %'],
    ['Its density is near 1025 kg/m³ at the surface.', '1025 kg/m³'],
  ])('of a quantity: %s', (sentence, answer) => {
    const draft = only(sentence);
    expect([draft.kind, draft.answer]).toEqual(['quantity', answer]);
    expect(draft.prompt).toBe(sentence.replace(answer, '…'));
  });

  it.each(['It is a wave that stands still.', 'This is the reason why it breaks.', 'Read on below.', ''])(
    'none of “%s”, of which nothing can be asked alone',
    (sentence) => {
      expect(draftQuestions(sentence)).toEqual([]);
    },
  );

  it('no question twice, and no more than twelve', () => {
    const passage = Array.from(
      { length: 20 },
      (_, i) => `Wave${'abcdefghijklmnopqrst'[i]} is a kind of long wave.`,
    );
    expect(draftQuestions([...passage, ...passage].join(' '))).toHaveLength(12);
  });

  test('whatever the passage, every draft has a prompt and an answer', () => {
    fc.assert(
      fc.property(fc.lorem({ maxCount: 30, mode: 'sentences' }), (passage) => {
        for (const { prompt, answer } of draftQuestions(passage)) {
          expect(prompt.trim()).not.toBe('');
          expect(answer.trim()).not.toBe('');
        }
      }),
    );
  });
});

describe('words that the student chose', () => {
  const text = 'Long waves outrun short ones. Depth decides where the water is shallow.';

  it('leave a gap in their sentence', () => {
    const from = text.indexOf('outrun');
    expect(blankQuestion(text, from - 1, from + 'outrun '.length)).toEqual({
      kind: 'blank',
      prompt: 'Long waves … short ones.',
      answer: 'outrun',
    });
  });

  it('may reach over two sentences', () => {
    const [from, to] = [text.indexOf('short'), text.indexOf(' decides')];
    expect(blankQuestion(text, from, to)).toEqual({
      kind: 'blank',
      prompt: 'Long waves outrun … decides where the water is shallow.',
      answer: 'short ones. Depth',
    });
  });

  it('must not be blank', () => {
    expect(blankQuestion(text, 4, 5)).toBeNull();
    expect(blankQuestion('', 0, 0)).toBeNull();
  });
});
