import { describe, expect, it, test } from 'vitest';
import { numberKey, readNumber, wholeNumber, writeNumber } from '#lib/papers/part-number.ts';
import { readPart } from '#lib/papers/read-part.ts';

describe('the number of a part', () => {
  it.each([
    ['3 (b) (ii) Find the speed.', '3 (b) (ii)', 'Find the speed.'],
    ['3(b)(ii) Find the speed.', '3 (b) (ii)', 'Find the speed.'],
    ['3. (b) Find the speed.', '3 (b)', 'Find the speed.'],
    ['3b) Find the speed.', '3 (b)', 'Find the speed.'],
    ['Question 3 Find the speed.', '3', 'Find the speed.'],
    ['Q3(a) Find', '3 (a)', 'Find'],
    ['12 The figure shows a wave.', '12', 'The figure shows a wave.'],
    ['(c) State why.', '(c)', 'State why.'],
    ['ii) State why.', '(ii)', 'State why.'],
    ['03.2 State why.', '03.2', 'State why.'],
    ['0 3 . 2 State why.', '03.2', 'State why.'],
    ['A4 State why.', 'A4', 'State why.'],
    ['7 a wave travels', '7', 'a wave travels'],
  ])('of “%s” is %s', (text, number, rest) => {
    const read = readNumber(text)!;
    expect([writeNumber(read.steps), read.rest]).toEqual([number, rest]);
  });

  it.each(['Find the speed.', 'A wave travels.', '10,000 waves', '20% of waves', '3rd waves', '1025 kg', ''])(
    '“%s” has none',
    (text) => {
      expect(readNumber(text)).toBeNull();
    },
  );

  it('does not go on for ever', () => {
    expect(readNumber(`3 ${'(i) '.repeat(50)}`)!.steps).toHaveLength(5);
  });

  it('is the same however it is written', () => {
    const keys = ['3 (b) (ii)', '3bii', '3b(ii)', '3 b ii', 'Q3(b)(ii)', '3. b) ii)'].map(numberKey);
    expect(new Set(keys)).toEqual(new Set(['3 b ii']));
    expect(numberKey('03.2')).not.toBe(numberKey('3.2'));
  });
});

test.each([
  [['ii'], ['3', 'b', 'i'], '3 (b) (ii)'],
  [['c'], ['3', 'b', 'iv'], '3 (c)'],
  [['i'], ['3', 'b'], '3 (b) (i)'],
  [['i'], ['3', 'h'], '3 (i)'],
  [['v'], ['3', 'b', 'iv'], '3 (b) (v)'],
  [['v'], ['3', 'u'], '3 (v)'],
  [['a', 'i'], ['4'], '4 (a) (i)'],
  [['ii'], ['3', 'i'], '3 (ii)'],
  [['a'], ['3', 'i'], '3 (i) (a)'],
  [['b'], ['3', 'i', 'a'], '3 (i) (b)'],
  [['ii'], ['3', 'i', 'b'], '3 (ii)'],
  [['a'], ['3'], '3 (a)'],
  [['i'], ['3', 'h', 'ii'], '3 (i)'],
  [['e'], ['3', 'b', 'ii'], '3 (e)'],
  [['iii'], ['3', 'b'], '3 (b) (iii)'],
  [['4'], ['3', 'b', 'iv'], '4'],
  [['b'], null, '(b)'],
])('%j after %j is %s', (steps, before, whole) => {
  expect(writeNumber(wholeNumber(steps, before))).toBe(whole);
});

describe('a part of a framed region', () => {
  it.each([
    ['3 (b) (ii) Find the speed. [4]', 4],
    ['3 (b) (ii) Find the speed.\n(4 marks)', 4],
    ['3 (b) (ii) Find the speed. [4 marks]', 4],
    ['3 (b) (ii) Find the speed.\n........... 4 marks', 4],
    ['3 (b) (ii) Find the speed. [1]\n(Total for Question 3 = 10 marks)', 1],
    ['3 (b) (ii) Find the speed. [Total: 12]', 12],
    ['3 (b) (ii) Find the speed.\n(4)', 4],
  ])('“%s” has %i marks', (text, marks) => {
    expect(readPart(text)).toMatchObject({ number: '3 (b) (ii)', marks });
  });

  it('says what is a guess', () => {
    expect(readPart('3 Use equation\n(4)').remarks).toEqual(['bareMarks']);
    expect(readPart('3 Find it. [Total: 12]').remarks).toEqual(['totalOnly']);
    expect(readPart('3 Find it. [2]').remarks).toEqual([]);
  });

  it('takes no marks where several parts are framed, and says which there are', () => {
    const text = '3 (a) State it. [2]\n(b) Find it. [3]';
    expect(readPart(text)).toMatchObject({ marks: null, found: [2, 3], remarks: ['severalMarks'] });
    expect(readPart(text).text).toContain('[3]');
  });

  it('reads neither where neither can be told', () => {
    const text = 'The depth is 200 m, as in (2), and 3 marks are on the rope';
    expect(readPart(text)).toEqual({
      number: '',
      steps: [],
      marks: null,
      text,
      found: [],
      remarks: ['noNumber', 'noMarks'],
    });
  });

  it('goes on from the part before', () => {
    const first = readPart('3 (b) (i) State it. [2]');
    expect(readPart('(ii) Find it. [3]', first.steps)).toMatchObject({
      number: '3 (b) (ii)',
      marks: 3,
      text: 'Find it.',
    });
  });
});
