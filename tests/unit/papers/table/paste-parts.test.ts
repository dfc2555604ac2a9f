import fc from 'fast-check';
import { describe, expect, it, test } from 'vitest';
import { type Pasted, pasteParts } from '#lib/papers/table/paste-parts.ts';
import { aTopic } from '../../builders.ts';

const WAVES = aTopic({ code: '1', title: 'Waves', order: 0 });
const TIDES = aTopic({ code: '2', title: 'Tides, currents and drift', order: 1 });
const SALT = aTopic({ code: '3.1', title: 'Salinity', order: 2 });
const SALT_TWICE = aTopic({ code: '3.2', title: 'Salinity', order: 3 });
const TOPICS = [WAVES, TIDES, SALT, SALT_TWICE];

const table = (...rows: string[][]): string => rows.map((row) => row.join('\t')).join('\n');
const paste = (text: string, total: number | null = null): Pasted => pasteParts(text, TOPICS, total);
const brief = ({ parts }: Pasted) => parts.map(({ number, marks }) => [number, marks]);
const abouts = ({ remarks }: Pasted) => remarks.map(({ line, about }) => [line, about]);

describe('a pasted table', () => {
  it('is read by its headings', () => {
    const read = paste(
      table(
        ['Paper 1'],
        ['Question', 'Part', 'Topic', 'Marks', 'Wording', 'Answer'],
        ['1', '(a)', '1', '2', 'State it.', 'It.'],
        ['1', '(b)', 'Tides, currents and drift', '3', 'Find it.', ''],
        ['2', '', '1; 3.1', '[5]', '', ''],
        ['Total', '', '', '10', '', ''],
      ),
    );
    expect(read.parts).toEqual([
      { line: 3, number: '1 (a)', marks: 2, topicIds: [WAVES.id], text: 'State it.', scheme: 'It.' },
      { line: 4, number: '1 (b)', marks: 3, topicIds: [TIDES.id], text: 'Find it.', scheme: '' },
      { line: 5, number: '2', marks: 5, topicIds: [WAVES.id, SALT.id], text: '', scheme: '' },
    ]);
    expect(read.total).toBe(10);
    expect(abouts(read)).toEqual([
      [1, 'leftOut'],
      [6, 'totalRow'],
    ]);
  });

  it('is read by what it holds, where nothing heads it', () => {
    const read = paste('1(a),Waves,State what a wave is.,2\n1(b),2,"Find it, in metres.",4 marks\n');
    expect(read.parts.map(({ line: _, ...part }) => part)).toEqual([
      { number: '1 (a)', marks: 2, topicIds: [WAVES.id], text: 'State what a wave is.', scheme: '' },
      { number: '1 (b)', marks: 4, topicIds: [TIDES.id], text: 'Find it, in metres.', scheme: '' },
    ]);
    expect(read.remarks).toEqual([]);
    expect(brief(paste('1\t4\n2\t6'))).toEqual([
      ['1', 4],
      ['2', 6],
    ]);
    expect(brief(paste('4\n6'))).toEqual([
      ['', 4],
      ['', 6],
    ]);
  });

  it('fills merged cells from above, and says so', () => {
    const read = paste(
      table(
        ['Q', 'Part', 'Topic', 'Marks'],
        ['1', 'a', 'Waves', '2'],
        ['', 'b', '', '3'],
        ['', 'c', '', ''],
        ['2', 'a', '', '4'],
      ),
    );
    expect(brief(read)).toEqual([
      ['1 (a)', 2],
      ['1 (b)', 3],
      ['1 (c)', 0],
      ['2 (a)', 4],
    ]);
    expect(read.parts.map(({ topicIds }) => topicIds.length)).toEqual([1, 1, 1, 0]);
    expect(abouts(read)).toEqual([
      [3, 'numberFromAbove'],
      [3, 'topicsFromAbove'],
      [4, 'numberFromAbove'],
      [4, 'noMarks'],
      [4, 'topicsFromAbove'],
    ]);
  });

  it('tells parts of no marks, marks that are none, marks over the total and numbers that come twice', () => {
    const read = paste(
      table(['No.', 'Marks'], ['1', '0'], ['2', 'four'], ['3', '90'], ['Q3', '4'], ['', '5'], ['6', '-2']),
      60,
    );
    expect(brief(read)).toEqual([
      ['1', 0],
      ['2', 0],
      ['3', 90],
      ['3', 4],
      ['', 5],
      ['6', 0],
    ]);
    expect(abouts(read)).toEqual([
      [0, 'totalDiffers'],
      [2, 'zeroMarks'],
      [3, 'marksUnread'],
      [4, 'overTotal'],
      [5, 'numberTwice'],
      [6, 'noNumber'],
      [7, 'marksUnread'],
    ]);
    expect(read.remarks.find(({ about }) => about === 'totalDiffers')!.text).toBe('99');
  });

  it('tells topics that are none or several, and cells that it cannot place', () => {
    const read = paste(
      table(
        ['No.', 'Topic', 'Marks', 'Seen'],
        ['1', 'Waves; Plankton', '4', 'in May'],
        ['2', 'Salinity', '4', ''],
        ['3', 'Rocks and sand', '4', ''],
      ),
    );
    expect(read.remarks).toEqual([
      { line: 2, about: 'otherColumn', text: 'in May' },
      { line: 2, about: 'topicUnknown', text: 'Plankton' },
      { line: 3, about: 'topicSeveral', text: 'Salinity' },
      { line: 4, about: 'topicUnknown', text: 'Rocks and sand' },
    ]);
    expect(read.parts.map(({ topicIds }) => topicIds)).toEqual([[WAVES.id], [], []]);
  });

  it.each(['', ' \n ', 'Number\tMarks', 'Marks\0\t4'])('“%s” has no parts', (text) => {
    expect(() => paste(text)).toThrow('errorPartsNone');
  });

  const numbers = fc.uniqueArray(fc.integer({ min: 1, max: 99 }), { minLength: 2, maxLength: 20 });
  test('comes back the same from any numbers and marks, with or without headings', () => {
    fc.assert(
      fc.property(numbers, fc.boolean(), fc.constantFrom('\t', ',', ';'), (all, isHeaded, delimiter) => {
        const rows = all.map((number) => [String(number), String((number % 12) + 1)]);
        const lines = isHeaded ? [['Question', 'Marks'], ...rows] : rows;
        const read = paste(lines.map((row) => row.join(delimiter)).join('\n'));
        expect(brief(read)).toEqual(rows.map(([number, marks]) => [number, Number(marks)]));
        expect(read.remarks).toEqual([]);
      }),
    );
  });

  test('throws away no row silently', () => {
    const cell = fc.constantFrom('', '1', '(a)', 'b', '4', 'Waves', 'State it.', 'Total', '0', 'x1', 'ii');
    const rows = fc.array(fc.array(cell, { minLength: 3, maxLength: 3 }), { maxLength: 8 });
    fc.assert(
      fc.property(rows, (all) => {
        const text = table(['Question', 'Marks', 'Wording'], ['1', '4', 'First.'], ...all);
        const { parts, remarks } = paste(text);
        const told = new Set([...parts, ...remarks].map(({ line }) => line));
        all.forEach((row, i) => {
          if (row.some((one) => one !== '')) expect(told).toContain(i + 3);
        });
      }),
    );
  });
});
