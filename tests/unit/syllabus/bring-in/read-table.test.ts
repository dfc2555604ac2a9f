import { describe, expect, it } from 'vitest';
import { parseTable } from '#lib/syllabus/bring-in/table/parse-table.ts';
import { readTable } from '#lib/syllabus/bring-in/table/read-table.ts';
import { StudentError } from '#lib/model/student-error.ts';
import { rowsText } from '../rows-text.ts';

const cells = (text: string) => parseTable(text).rows.map((row) => row.cells);
const read = (...lines: string[]) => rowsText(readTable(lines.join('\r\n')).rows);

// RFC 4180, section 2, by its seven rules; the examples are the RFC's own.
describe('RFC 4180', () => {
  it.each([
    [
      '1: rows end in CRLF',
      'aaa,bbb,ccc\r\nzzz,yyy,xxx\r\n',
      [
        ['aaa', 'bbb', 'ccc'],
        ['zzz', 'yyy', 'xxx'],
      ],
    ],
    [
      '2: the last row may end in nothing',
      'aaa,bbb,ccc\r\nzzz,yyy,xxx',
      [
        ['aaa', 'bbb', 'ccc'],
        ['zzz', 'yyy', 'xxx'],
      ],
    ],
    [
      '3: a header is a row as any other',
      'field_name,field_name,field_name\r\naaa,bbb,ccc\r\n',
      [
        ['field_name', 'field_name', 'field_name'],
        ['aaa', 'bbb', 'ccc'],
      ],
    ],
    [
      '5: cells may be quoted or not',
      '"aaa","bbb","ccc"\r\nzzz,yyy,xxx',
      [
        ['aaa', 'bbb', 'ccc'],
        ['zzz', 'yyy', 'xxx'],
      ],
    ],
    ['7: a quote inside is doubled', '"aaa","b""bb","ccc"', [['aaa', 'b"bb', 'ccc']]],
  ])('rule %s', (_, text, wanted) => {
    expect(cells(text)).toEqual(wanted);
  });

  it('rule 6: quoted cells hold line ends, commas and quotes; a line end counts as a space here', () => {
    expect(cells('"aaa","b\r\nbb","ccc"\r\nzzz,yyy,xxx')).toEqual([
      ['aaa', 'b bb', 'ccc'],
      ['zzz', 'yyy', 'xxx'],
    ]);
    expect(cells('"a,a","b ""b"" b",c\r\n')).toEqual([['a,a', 'b "b" b', 'c']]);
  });

  it('rule 4 asks for no spaces to be dropped; around a text they carry nothing here', () => {
    expect(cells('a, b ,c')).toEqual([['a', 'b', 'c']]);
  });
});

describe('other tables', () => {
  it('have semicolons, tabs, plain line ends, a byte order mark or empty rows', () => {
    expect(cells('a;b\nc;d')).toEqual([
      ['a', 'b'],
      ['c', 'd'],
    ]);
    expect(cells('\ufeffa\tb, c\nd\t"e\nf"\n\t\n')).toEqual([
      ['a', 'b, c'],
      ['d', 'e f'],
    ]);
  });

  it('with a quote that is never closed come in all the same, and say so', () => {
    const { rows, remarks } = parseTable('code,topic\n1,"Waves\n2,Tides');
    expect(rows.map((row) => row.cells)).toEqual([
      ['code', 'topic'],
      ['1', '"Waves'],
      ['2', 'Tides'],
    ]);
    expect(remarks).toEqual([{ line: 2, about: 'quote-open' }]);
  });

  it.each([
    ['nothing', ' \n,,\n', 'errorSyllabusEmpty'],
    ['bytes', 'PK\0\0,a', 'errorSyllabusNotText'],
    ['numbers only', '1,2,3\n4,5,6', 'errorTableNoText'],
  ])('of %s are told', (_, text, name) => {
    expect(() => readTable(text)).toThrow(new StudentError(name as 'errorSyllabusEmpty'));
  });
});

describe('a table with a header', () => {
  it('of codes, topics, statements and marks: those of a topic add up', () => {
    const { rows } = readTable(
      [
        'Code,Topic,Learning outcome,Marks',
        '1.1.a,Salinity,State what is meant by salinity.,4',
        '1.1.b,Salinity,"Calculate the salt in 2,500 kg of sea water.",6',
        '1.2.a,"Temperature, salinity and density",Sketch a density profile.,10',
      ].join('\r\n'),
    );
    expect(rowsText(rows)).toEqual([
      't Salinity {10}',
      '  s [1.1.a] State what is meant by salinity.',
      '  s [1.1.b] Calculate the salt in 2,500 kg of sea water.',
      't Temperature, salinity and density {10}',
      '  s [1.2.a] Sketch a density profile.',
    ]);
    expect(rows[0]).toMatchObject({ unit: 'marks', line: 2 });
  });

  it('of a column for each level, as merged cells leave them', () => {
    expect(
      read(
        'Unit\tTopic\tSpecification point\tHours',
        '1 Waves\t1.1 Swell\tState its speed.\t2',
        '\t\tExplain its spread.\t',
        '\t1.2 Surf\tDescribe breakers.\t3',
        '2 Tides\t2.1 Springs\t\t4',
      ),
    ).toEqual([
      't [1] Waves',
      '  t [1.1] Swell {2}',
      '    s State its speed.',
      '    s Explain its spread.',
      '  t [1.2] Surf {3}',
      '    s Describe breakers.',
      't [2] Tides',
      '  t [2.1] Springs {4}',
    ]);
  });

  it('of parents by code or title, in any order', () => {
    expect(
      read('code,title,parent', '1.1,Swell,1', '1,Waves,', '2,Tides,', 'x,Springs,Tides', '1.2,Surf,1'),
    ).toEqual(['t [1] Waves', '  t [1.1] Swell', '  t [1.2] Surf', 't [2] Tides', '  t [x] Springs']);
  });

  it('of codes and titles nests by the codes', () => {
    expect(read('No.,Title,Weighting', '1,Waves,60%', '1.1,Swell,', '2,Tides,40 %')).toEqual([
      't [1] Waves {60}',
      '  t [1.1] Swell',
      't [2] Tides {40}',
    ]);
  });

  it('of codes for both topics and statements', () => {
    expect(
      read(
        'Topic no.,Topic,Ref,Statement',
        '1,Waves,1a,State k.',
        '1,Waves,1b,State ω.',
        '2,Tides,2a,Name two.',
      ),
    ).toEqual(['t [1] Waves', '  s [1a] State k.', '  s [1b] State ω.', 't [2] Tides', '  s [2a] Name two.']);
  });

  it('of tiers and options', () => {
    const { rows } = readTable(
      'Topic,Tier,Option\nWaves,Both,\nShoaling,H,\nIce,Higher only,B'.replace(/,(?=\n|$)/g, ',-'),
    );
    expect(rows.map(({ text, group }) => [text, group])).toEqual([
      ['Waves', undefined],
      ['Shoaling', 'Higher tier'],
      ['Ice', 'Higher tier'],
    ]);
    expect(readTable('Topic,Option\nIce,B\nSand,').rows.map(({ group }) => group)).toEqual([
      'Option B',
      undefined,
    ]);
  });

  it('under a title, which names the course', () => {
    const { rows, courseName, remarks } = readTable(
      'Foundation Oceanography,,\nVersion 3,,\nCode,Topic,Hours\n1,Waves,3',
    );
    expect(rowsText(rows)).toEqual(['t [1] Waves {3}']);
    expect(courseName).toBe('Foundation Oceanography');
    expect(remarks).toEqual([{ line: 2, about: 'left-out', text: 'Version 3' }]);
  });

  it('where a column called Level counts levels, it is no tier', () => {
    expect(readTable('Level,Topic\n1,Waves\n2,Swell').rows.every(({ group }) => group === undefined)).toBe(
      true,
    );
  });
});

describe('a table without a header', () => {
  it('is read by what its cells look like', () => {
    expect(read('1,Waves,20%', '1.1,Swell,', '1.2,Surf,', '2,Tides,80%')).toEqual([
      't [1] Waves {20}',
      '  t [1.1] Swell',
      '  t [1.2] Surf',
      't [2] Tides {80}',
    ]);
    expect(read('Waves\tState its speed.', 'Waves\tDerive the limit.', 'Tides\tName the two tides.')).toEqual(
      ['t Waves', '  s State its speed.', '  s Derive the limit.', 't Tides', '  s Name the two tides.'],
    );
  });
});

describe('what is wrong in a table', () => {
  it('missing parents and circles stand at the top', () => {
    const { rows, remarks } = readTable('code,title,parent\n1,Waves,2\n2,Swell,1\n3,Ice,9');
    expect(rowsText(rows)).toEqual(['t [1] Waves', '  t [2] Swell', 't [3] Ice']);
    expect(remarks).toEqual([
      { line: 2, about: 'circle' },
      { line: 4, about: 'no-parent' },
    ]);
  });

  it('codes that stand twice, rows without text and numbers that are none', () => {
    const { rows, remarks } = readTable('code,title,marks\n1.1,Waves,ten\n1.1,Swell,5\n1.3,,4');
    expect(rows.map(({ share }) => share)).toEqual([null, 5]);
    expect(remarks).toEqual([
      { line: 2, about: 'number-unread' },
      { line: 3, about: 'code-twice' },
      { line: 4, about: 'no-text', text: '1.3 · 4' },
    ]);
  });
});
