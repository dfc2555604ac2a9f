import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { StudentError } from '#lib/model/student-error.ts';
import { readOutline } from '#lib/syllabus/read-outline.ts';
import { rowsText } from './rows-text.ts';

const read = (...lines: string[]) => rowsText(readOutline(lines.join('\n')).rows);

describe('numbers', () => {
  it('place a row under the number that they start with, whatever the indent', () => {
    expect(read('1 Waves', '1.1 Dispersion', '      1.1.1 Deep water', '1.2 Swell', '2 Tides')).toEqual([
      't [1] Waves',
      '  t [1.1] Dispersion',
      '    t [1.1.1] Deep water',
      '  t [1.2] Swell',
      't [2] Tides',
    ]);
  });

  it('may end in letters, be bracketed, or be Roman', () => {
    expect(
      read('1. Waves', '1.1.a Swell', '(a) Height', '(b) Period', '(i) mean', '(ii) peak', '(c) Slope'),
    ).toEqual([
      't [1] Waves',
      '  t [1.1.a] Swell',
      '    t [(a)] Height',
      '    t [(b)] Period',
      '      t [(i)] mean',
      '      t [(ii)] peak',
      '    t [(c)] Slope',
    ]);
  });

  it('tell the letter i from the Roman one by what stands before', () => {
    expect(read('(g) Swell', '(h) Surf', '(i) Spray', '(j) Foam').every((row) => row.startsWith('t'))).toBe(
      true,
    );
    expect(read('i Swell', 'ii Surf', 'iii Spray', 'iv Foam', 'v Froth')).toEqual([
      't [i] Swell',
      't [ii] Surf',
      't [iii] Spray',
      't [iv] Foam',
      't [v] Froth',
    ]);
  });

  it('follow the order I, A, 1', () => {
    expect(
      read('I. Waves', 'A. Deep', '1. Phase', '2. Group', 'B. Shallow', 'II. Tides', 'A. Spring'),
    ).toEqual([
      't [I] Waves',
      '  t [A] Deep',
      '    t [1] Phase',
      '    t [2] Group',
      '  t [B] Shallow',
      't [II] Tides',
      '  t [A] Spring',
    ]);
  });

  it('start a list inside where they start again at 1, and go back to the chapters after it', () => {
    expect(read('2.3 Swell', '1. Height', '2. Period', '2.4 Surf')).toEqual([
      't [2.3] Swell',
      '  t [1] Height',
      '  t [2] Period',
      't [2.4] Surf',
    ]);
    expect(read('1. Waves', '   1. Deep', '   2. Shallow', '2. Tides', '   1. Spring', '3. Ice')).toEqual([
      't [1] Waves',
      '  t [1] Deep',
      '  t [2] Shallow',
      't [2] Tides',
      '  t [1] Spring',
      't [3] Ice',
    ]);
  });

  it('stay side by side where a list says 1 throughout, as Markdown allows', () => {
    expect(read('1. Waves', '1. Tides', '   - Spring', '1. Ice')).toEqual([
      't [1] Waves',
      't [1] Tides',
      '  t Spring',
      't [1] Ice',
    ]);
  });

  it('stand under units and under unnumbered heads', () => {
    expect(read('Unit 1: Waves', '1.1 Swell', 'Unit 2 Tides', '1.1 Spring', '1.2 Neap')).toEqual([
      't [Unit 1] Waves',
      '  t [1.1] Swell',
      't [Unit 2] Tides',
      '  t [1.1] Spring',
      '  t [1.2] Neap',
    ]);
    expect(read('Waves', '1.1 Swell', '1.2 Surf', 'Tides', '2.1 Spring')).toEqual([
      't Waves',
      '  t [1.1] Swell',
      '  t [1.2] Surf',
      't Tides',
      '  t [2.1] Spring',
    ]);
  });

  it('are read with letters before them', () => {
    expect(read('Paper 1 (40 %)', 'A1 Waves', 'A1.1 Swell', 'B1 Heat', 'Paper 2 (60 %)', 'C1 Ice')).toEqual([
      't Paper 1 {40}',
      '  t [A1] Waves',
      '    t [A1.1] Swell',
      '  t [B1] Heat',
      't Paper 2 {60}',
      '  t [C1] Ice',
    ]);
  });

  it('are not seen in a row that only begins with one', () => {
    expect(read('1. Waves', '', '2 types of tide', '2. Tides', '', 'A wave in deep water')).toEqual([
      't [1] Waves',
      '  t 2 types of tide',
      't [2] Tides',
      't A wave in deep water',
    ]);
  });

  it('take their text from the next line where a table has put it there', () => {
    expect(read('1.1', 'Waves', '1.2', 'Tides')).toEqual(['t [1.1] Waves', 't [1.2] Tides']);
  });
});

describe('indents, bullets and headings', () => {
  it.each([
    ['tabs', '\t'],
    ['two spaces', '  '],
    ['four spaces', '    '],
  ])('nest by %s', (_, step) => {
    expect(read('Waves', `${step}Deep`, `${step}${step}Phase`, `${step}Shallow`, 'Tides')).toEqual([
      't Waves',
      '  t Deep',
      '    t Phase',
      '  t Shallow',
      't Tides',
    ]);
  });

  it('nest sloppy indents', () => {
    expect(read('   Waves', '       Deep', '      Shallow', '   Tides', '        Spring', ' Ice')).toEqual([
      't Waves',
      '  t Deep',
      '  t Shallow',
      't Tides',
      '  t Spring',
      't Ice',
    ]);
  });

  it('nest bullets under the last numbered row, and by sign where the indent is lost', () => {
    expect(read('1 Waves', '• Deep', '– Phase', '– Group', '• Shallow', '2 Tides', '* Spring')).toEqual([
      't [1] Waves',
      '  t Deep',
      '    t Phase',
      '    t Group',
      '  t Shallow',
      't [2] Tides',
      '  t Spring',
    ]);
  });

  it('nest by Markdown headings, with lists below them', () => {
    expect(read('## Waves', '- Deep', '  - Phase', '## Tides', '### 2.1 Spring', 'Range')).toEqual([
      't Waves',
      '  t Deep',
      '    t Phase',
      't Tides',
      '  t [2.1] Spring',
      '    t Range',
    ]);
  });

  it('reads CRLF, a byte order mark and no-break spaces', () => {
    const { rows } = readOutline('\ufeff1\u00a0Waves\r\n\u00a0\u00a01.1 Swell\r\n\r\n2 Tides');
    expect(rowsText(rows)).toEqual(['t [1] Waves', '  t [1.1] Swell', 't [2] Tides']);
    expect(rows.map(({ line }) => line)).toEqual([1, 2, 4]);
  });

  it('lifts what is too deep', () => {
    const deep = Array.from({ length: 13 }, (_, i) => ' '.repeat(4 * i) + 'Wave');
    const { rows, remarks } = readOutline(['Tides', ...deep].join('\n'));
    expect(rows.slice(-2).map(({ depth }) => depth)).toEqual([11, 11]);
    expect(remarks).toEqual([{ line: 14, about: 'too-deep' }]);
  });
});

describe('wrapped lines', () => {
  it('are joined where the text goes on in small letters', () => {
    const { rows, remarks } = readOutline('1.1 Waves and the\ndispersion of swell in deep water\n1.2 Tides');
    expect(rowsText(rows)).toEqual([
      't [1.1] Waves and the dispersion of swell in deep water',
      't [1.2] Tides',
    ]);
    expect(remarks).toEqual([{ line: 1, about: 'joined' }]);
  });

  it('are joined after a full line, further in or not', () => {
    expect(
      read(
        '1.1 Currents in the deep sea that are driven by heat and salt',
        '    Salt sinks',
        '1.2 Waves on the sea and the wind that has raised them there',
        'Swell outruns it',
        '1.3 Ice',
      ),
    ).toEqual([
      't [1.1] Currents in the deep sea that are driven by heat and salt Salt sinks',
      't [1.2] Waves on the sea and the wind that has raised them there Swell outruns it',
      't [1.3] Ice',
    ]);
  });

  it('are joined between a number and the next, and a hyphen at the end closes up', () => {
    expect(read('1.1 Waves', 'Long and short', '1.2 Disper-', 'sion', '1.3 Ice')).toEqual([
      't [1.1] Waves Long and short',
      't [1.2] Dispersion',
      't [1.3] Ice',
    ]);
  });

  it('are told from children', () => {
    expect(read('1 Waves', '  Deep', '  Shallow', '2 Tides', 'Spring', 'Neap', '3 Ice')).toEqual([
      't [1] Waves',
      '  t Deep',
      '  t Shallow',
      't [2] Tides',
      '  t Spring',
      '  t Neap',
      't [3] Ice',
    ]);
  });
});

describe('shares', () => {
  it.each([
    ['Waves (20 %)', 'Waves', 20],
    ['Waves 20%', 'Waves', 20],
    ['Waves [12 marks]', 'Waves', 12],
    ['Waves: 8 hours', 'Waves', 8],
    ['Waves ........ 8 h', 'Waves', 8],
    ['Waves (10–15 % of the exam)', 'Waves', 12.5],
    ['Waves (12,5 %)', 'Waves', 12.5],
    ['Waves (1)', 'Waves (1)', null],
    ['Tides with a period of 12 hours', 'Tides with a period of 12 hours', null],
    ['Explain a range under 5%', 'Explain a range under 5%', null],
    ['20 %', '20 %', null],
  ])('of "%s"', (line, text, share) => {
    expect(readOutline(line).rows).toMatchObject([{ text, share }]);
  });

  it.each([
    ['Waves (20 %)', 'percent'],
    ['Waves 20 per cent', 'percent'],
    ['Waves [12 marks]', 'marks'],
    ['Waves: 8 hours', 'hours'],
    ['Waves (3 h)', 'hours'],
    ['Waves (4 lessons)', undefined],
    ['Waves', undefined],
  ])('of "%s" keep what they are given in', (line, unit) => {
    expect(readOutline(line).rows[0]?.unit).toBe(unit);
  });
});

describe('tiers and options', () => {
  it.each([
    ['Shoaling (Higher tier only)', 'Shoaling', 'Higher tier'],
    ['Shoaling (HT only)', 'Shoaling', 'Higher tier'],
    ['Shoaling (higher only)', 'Shoaling', 'Higher tier'],
    ['Shoaling [Higher-tier]', 'Shoaling', 'Higher tier'],
    ['Shoaling – Foundation tier only', 'Shoaling', 'Foundation tier'],
    ['Shoaling (HL)', 'Shoaling', 'HL'],
    ['SL only: Shoaling', 'Shoaling', 'SL'],
    ['[AHL] Shoaling', 'Shoaling', 'AHL'],
    ['Shoaling (A-level only)', 'Shoaling', 'A level'],
    ['Shoaling (Option B)', 'Shoaling', 'Option B'],
    ['Shoaling (optional)', 'Shoaling', 'Optional'],
    ['Shoaling (separate sciences only)', 'Shoaling', 'Separate sciences'],
    ['Shoaling (HL only) (12 marks)', 'Shoaling', 'HL'],
    ['Shoaling (12 marks) (HL only)', 'Shoaling', 'HL'],
    ['Option B: Estuaries', 'Estuaries', 'Option B'],
    ['Higher tier', 'Higher tier', 'Higher tier'],
    ['Foundation tier: Shoaling', 'Shoaling', 'Foundation tier'],
  ])('of "%s"', (line, text, group) => {
    expect(readOutline(line).rows).toMatchObject([{ text, group }]);
  });

  it.each([
    'State the dispersion relation (deep water only)',
    'Higher harmonics',
    'The core of the Earth (core)',
    'Standard deviation',
    'Options for coastal defence',
    'Higher tides',
    'SL, the still level',
  ])('are not seen in "%s"', (line) => {
    expect(readOutline(line).rows).toMatchObject([{ text: line }]);
    expect(readOutline(line).rows[0]).not.toHaveProperty('group');
  });
});

describe('statements', () => {
  it('are leaves that open with a command word, "can" or "be able to"', () => {
    expect(
      read(
        '1 Waves',
        '1.1 Swell',
        '(a) state the relation',
        '(b) can sketch it',
        '(c) be able to use it',
        '1.2 Surf',
      ),
    ).toEqual([
      't [1] Waves',
      '  t [1.1] Swell',
      '    s [(a)] state the relation',
      '    s [(b)] can sketch it',
      '    s [(c)] be able to use it',
      '  t [1.2] Surf',
    ]);
  });

  it('are not topics whose name could be a command word', () => {
    expect(read('1 Heat', '1.1 State functions', '1.2 Graphs of functions', '1.3 Use of models')).toEqual([
      't [1] Heat',
      '  t [1.1] State functions',
      '  t [1.2] Graphs of functions',
      '  t [1.3] Use of models',
    ]);
  });

  it('take in such a row among points', () => {
    expect(read('Heat', '- Define entropy', '- Derive the gas law', '- Sketch isotherms')).toEqual([
      't Heat',
      '  s Define entropy',
      '  s Derive the gas law',
      '  s Sketch isotherms',
    ]);
  });

  it('are sentences deep in a numbered syllabus', () => {
    expect(read('1 Waves', '1.1 Swell', '1.1.1 Long waves outrun short ones.', '1.1.2 Surf')).toEqual([
      't [1] Waves',
      '  t [1.1] Swell',
      '    s [1.1.1] Long waves outrun short ones.',
      '    t [1.1.2] Surf',
    ]);
  });

  it('never have children and never stand at the top', () => {
    expect(read('Define ice', 'Explain waves', '  Explain the following', '    Define swell')).toEqual([
      't Define ice',
      't Explain waves',
      '  t Explain the following',
      '    s Define swell',
    ]);
  });
});

describe('the title', () => {
  it('is a first line alone at the top', () => {
    const { courseName, rows } = readOutline('Foundation Oceanography\n1 Waves\n1.1 Swell\n2 Tides');
    expect(courseName).toBe('Foundation Oceanography');
    expect(rowsText(rows)).toEqual(['t [1] Waves', '  t [1.1] Swell', 't [2] Tides']);
    expect(readOutline('# Oceanography\n- Waves\n- Tides')).toMatchObject({ courseName: 'Oceanography' });
    expect(readOutline('Oceanography\n  Waves\n  Tides')).toMatchObject({ courseName: 'Oceanography' });
  });

  it('is not a topic among others, nor a row with bullets', () => {
    expect(readOutline('Waves\n  Deep\nTides\n  Spring').courseName).toBeNull();
    expect(readOutline('Waves\n- Deep\n- Shallow').courseName).toBeNull();
    expect(readOutline('Waves').courseName).toBeNull();
  });
});

describe('remarks', () => {
  it('name skipped levels and codes that stand twice', () => {
    const { remarks } = readOutline('1 Waves\n1.1.1 Deep\n2 Tides\n2.1 Spring\n2.1 Neap');
    expect(remarks).toEqual([
      { line: 2, about: 'level-skipped' },
      { line: 5, about: 'code-twice' },
    ]);
  });

  it('name a number without the chapter that it needs', () => {
    const { rows, remarks } = readOutline('1 Waves\n1.1 Deep\n2.1 Spring');
    expect(rowsText(rows)).toEqual(['t [1] Waves', '  t [1.1] Deep', 't [2.1] Spring']);
    expect(remarks).toEqual([{ line: 3, about: 'level-skipped' }]);
  });

  it('name lines that say nothing of their own', () => {
    const { rows, remarks } = readOutline(
      '1 Waves\nCandidates should be able to:\n• define swell\n\nPage 3 of 20\n\n2 Tides',
    );
    expect(rowsText(rows)).toEqual(['t [1] Waves', '  s define swell', 't [2] Tides']);
    expect(remarks).toEqual([
      { line: 2, about: 'left-out', text: 'Candidates should be able to:' },
      { line: 5, about: 'left-out', text: 'Page 3 of 20' },
    ]);
  });

  it('name cut texts, which end between words', () => {
    const { rows, remarks } = readOutline('swell '.repeat(200));
    expect(rows[0]?.text.length).toBeLessThanOrEqual(500);
    expect(rows[0]?.text.endsWith('swell')).toBe(true);
    expect(remarks).toEqual([{ line: 1, about: 'cut' }]);
  });
});

describe('bad input', () => {
  const errorOf = (text: string): StudentError => {
    try {
      readOutline(text);
    } catch (error) {
      if (error instanceof StudentError) return error;
    }
    throw new Error('nothing went wrong');
  };

  it.each([
    ['nothing', '', 'errorSyllabusEmpty', []],
    ['blank lines', ' \n\t\n\u00a0', 'errorSyllabusEmpty', []],
    ['rules only', '-----\n=====', 'errorSyllabusEmpty', []],
    ['a NUL', 'PK\0\0', 'errorSyllabusNotText', []],
    ['bytes that are not text', '\ufffd\ufffdJFIF\ufffd\ufffd', 'errorSyllabusNotText', []],
    ['too many lines', 'Waves\n'.repeat(5001), 'errorSyllabusManyLines', ['5001', '5000']],
    ['too much', 'a'.repeat(1_000_001), 'errorSyllabusTooLarge', ['1000001', '1000000']],
  ])('is told: %s', (_, text, name, values) => {
    expect(errorOf(text)).toMatchObject({ message: name, values });
  });

  it('is not a stray odd character', () => {
    expect(readOutline('1 Waves\ufffd\n2 Tides\u0007').rows).toHaveLength(2);
  });

  it('is read or told, whatever the text, and rows never jump a level', () => {
    const piece = fc.oneof(
      fc.constantFrom(
        ...[
          '\n',
          '\t',
          '  ',
          '1',
          '.',
          '(a)',
          ' ',
          '1.1 ',
          'i ',
          '- ',
          '• ',
          '# ',
          '**',
          'Unit 2',
          '20 %',
          'state the ',
        ],
      ),
      fc.string({ unit: 'binary', maxLength: 6 }),
      fc.string({ maxLength: 12 }),
    );
    fc.assert(
      fc.property(fc.array(piece, { maxLength: 60 }), (pieces) => {
        let reading;
        try {
          reading = readOutline(pieces.join(''));
        } catch (error) {
          expect(error).toBeInstanceOf(StudentError);
          return;
        }
        reading.rows.forEach((row, i) => {
          expect(row.depth).toBeLessThanOrEqual((reading.rows[i - 1]?.depth ?? -1) + 1);
          expect(row.text).not.toBe('');
          const hasChildren = (reading.rows[i + 1]?.depth ?? 0) > row.depth;
          if (row.kind === 'statement') expect(hasChildren || row.depth === 0).toBe(false);
        });
      }),
      { numRuns: 500 },
    );
  });
});

describe('a front page', () => {
  const text =
    'Foundation Oceanography\nOrmscaith College: first-year course\n\n1 Sea water\n\t1.1 Salinity\n2 Waves';

  it('names the course and is no topic', () => {
    const { rows, courseName, remarks } = readOutline(text);
    expect(courseName).toBe('Foundation Oceanography');
    expect(rows.map(({ depth, code }) => [depth, code])).toEqual([
      [0, '1'],
      [1, '1.1'],
      [0, '2'],
    ]);
    expect(remarks).toEqual([{ line: 2, about: 'left-out', text: 'Ormscaith College: first-year course' }]);
  });

  it('is not seen where the text below is not numbered', () => {
    expect(readOutline('Sea water\nWaves\n1 Tides\nCurrents').rows[0]!.text).toBe('Sea water');
  });
});
