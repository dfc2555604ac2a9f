import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { compareAnswer, type Reason } from '#lib/recall/compare-answer.ts';
import { isChoice } from '#lib/recall/marks.ts';

/** Stands for rendering to MathML: TeX is the same but for spaces and braces around single signs. */
const sameMaths = (one: string, other: string): boolean => {
  const bare = (tex: string) => tex.replace(/\s+/g, '').replace(/\{(.)\}/g, '$1');
  return bare(one) === bare(other);
};
const compare = (typed: string, kept: string, outOf = 1) => compareAnswer(typed, kept, { outOf, sameMaths });

const FULL: [string, string, Reason][] = [
  ['Spring tide', 'Spring tide', 'same'],
  ['spring  tide.', 'Spring tide', 'sameButForm'],
  ['the thermocline', 'Thermocline', 'sameButForm'],
  ['A thermocline is a layer', 'a thermocline is A layer', 'sameButForm'],
  ['sea level', 'sea-level', 'sameButForm'],
  ['It is the Earth’s rotation', "it is the Earth's rotation", 'sameButForm'],
  ['ﬂow', 'flow', 'sameButForm'],
  ['CO2', 'CO₂', 'sameButForm'],
  ['Ω = 2π / T', 'Ω=2π/T', 'sameButForm'],
  ['“neap tide”', 'neap tide', 'sameButForm'],
  ['1,000.5', '1000.5', 'sameNumber'],
  ['1 000,5', '1,000.5', 'sameNumber'],
  ['1.0005e3', '1,000.5', 'sameNumber'],
  ['1.0005 × 10³', '1000.5', 'sameNumber'],
  ['−2', '-2', 'sameNumber'],
  ['9.80', '9.8', 'sameNumber'],
  ['.5', '0,5', 'sameNumber'],
  ['0.125', '0,125', 'sameNumber'],
  ["12'500", '12,500', 'sameNumber'],
  ['100 000', '1e5', 'sameNumber'],
  ['1.000.000', '1 000 000', 'sameNumber'],
  ['35 %', '35%', 'sameNumber'],
  ['9.8 m s^-2', '9.8 m/s²', 'sameNumber'],
  ['9.8 m·s⁻²', '9.8 m/s^2', 'sameNumber'],
  ['9.8 m s-2', '9.8 m/s2', 'sameNumber'],
  ['10 metres per second', '10 m/s', 'sameNumber'],
  ['v = 10 m/s', '10 m s^-1', 'sameNumber'],
  ['1025 kg m^-3', '1 025 kg/m³', 'sameNumber'],
  ['4000 J/kg K', '4000 J kg^-1 K^-1', 'sameNumber'],
  ['4 °C', '4 degrees Celsius', 'sameNumber'],
  ['4 km', '4000 m', 'sameInOtherUnit'],
  ['36 km/h', '10 m/s', 'sameInOtherUnit'],
  ['101.325 kPa', '101325 N/m²', 'sameInOtherUnit'],
  ['1 h', '60 min', 'sameInOtherUnit'],
  ['\\(c = \\sqrt{gh}\\)', '$c=\\sqrt{gh}$', 'sameMaths'],
  ['c=\\sqrt{gh}', '$c = \\sqrt{gh}$', 'sameMaths'],
  ['The speed is $c=\\sqrt{gh}$', 'the speed is \\(c = \\sqrt{gh}\\).', 'sameMaths'],
  ['salinity, temperature and pressure', 'temperature, pressure, salinity', 'sameTerms'],
  ['Salinity; pressure; temperature', 'Temperature, salinity and pressure', 'sameTerms'],
];

describe('full marks are suggested', () => {
  it.each(FULL)('%s | %s: %s', (typed, kept, reason) => {
    expect(compare(typed, kept, 3)).toMatchObject({ marks: 3, reason });
    expect(compare(kept, typed, 3).marks).toBe(3);
  });
});

const UNSURE: [string, string][] = [
  ['neap tide', 'spring tide'],
  ['sprng tide', 'spring tide'],
  ['it increases', 'it decreases'],
  ['it does not rise', 'it does rise'],
  ['warm water', 'warm salty water'],
  ['1000', '1.000'],
  ['1', '1,000'],
  ['125', '0,125'],
  ['1,00,000', '100000'],
  ['-2', '2'],
  ['9.8', '9.81'],
  ['1e3', '1e-3'],
  ['2·10^3', '2·10^-3'],
  ['9.8 m/s', '9.8 m/s²'],
  ['10 ms^-1', '10 m s^-1'],
  ['5 Mm', '5 mm'],
  ['v = 10 m/s', 'u = 10 m/s'],
  ['5 mW', '5 MW'],
  ['5 N/m', '5 N m'],
  ['10 °C', '10 K'],
  ['283.15 K', '10 °C'],
  ['35', '35 %'],
  ['0.35', '35 %'],
  ['9.8', '9.8 m/s²'],
  ['10 knots', '10 m/s'],
  ['10 m', 'about 10 m'],
  ['3, 4', '4, 3'],
  ['4 to 7', '7 to 4'],
  ['k', 'K'],
  ['A', 'a'],
  ['a = F/m', 'A = F/m'],
  ['depends on k', 'depends on K'],
  ['f = 2Ω sin φ', 'f = 2ω sin φ'],
  ['x²', 'x2'],
  ['x-1', 'x 1'],
  ['a<b', 'a>b'],
  ['$c = \\sqrt{gh}$', '$c = \\sqrt{gk}$'],
  ['$c$ rises with $h$', '$h$ rises with $c$'],
  ['ω² = gk', '$\\omega^2 = gk$'],
  ['first ebb, then flood', 'then flood, first ebb'],
  ['sodium and iron', 'sodium and chloride'],
  ['', 'anything'],
  ['   ', 'anything'],
  ['.', '!'],
  ['constructor', '5 m'],
  ['5 constructor', '5 m'],
];

describe('it cannot be told, and none is never suggested', () => {
  it.each(UNSURE)('%s | %s', (typed, kept) => {
    expect(compare(typed, kept).marks).toBeNull();
    if (typed.trim() !== '') expect(compare(kept, typed).marks).toBeNull();
  });

  it('says so where only the unit is missing, or nothing was typed', () => {
    expect(compare('9.8', '9.8 m/s²').reason).toBe('unitMissing');
    expect(compare(' ', 'x').reason).toBe('nothingTyped');
    expect(compare('neap', 'spring').reason).toBe('cannotTell');
  });
});

describe('some terms of a list and no others', () => {
  it.each([
    ['temperature', 'temperature and salinity', 1, 0.5, 1],
    ['salinity, temperature', 'temperature, salinity, pressure', 3, 2, 2],
    ['salinity', 'temperature, salinity, pressure', 3, 1, 1],
    ['salinity', 'temperature, salinity, pressure, light', 20, 5, 1],
  ])('%s | %s of %s: %s', (typed, kept, outOf, marks, found) => {
    const suggestion = compare(typed, kept, outOf);
    expect(suggestion).toMatchObject({ marks, reason: 'someTerms', terms: { found } });
  });

  it('suggest nothing where no mark stands for so few', () => {
    expect(compare('salinity', 'temperature, salinity, pressure', 2).marks).toBeNull();
  });
});

it('suggests marks that can be given, above none, whatever is typed', () => {
  const anyText = fc.oneof(
    fc.string({ unit: 'binary', maxLength: 30 }),
    fc
      .array(
        fc.constantFrom('1', '000', ',', '.', ' ', 'm', 's', '^-1', '/', 'tide', 'and', '$x$', '-', 'e3'),
        {
          maxLength: 8,
        },
      )
      .map((parts) => parts.join('')),
  );
  fc.assert(
    fc.property(anyText, anyText, fc.integer({ min: 1, max: 20 }), (typed, kept, outOf) => {
      const { marks } = compare(typed, kept, outOf);
      if (marks === null) return;
      expect(marks).toBeGreaterThan(0);
      expect(isChoice(marks, outOf)).toBe(true);
    }),
    { numRuns: 500 },
  );
});

it('finds an answer the same as itself, and takes twenty thousand characters', () => {
  const long = 'a thousand words, and more; '.repeat(700);
  expect(compare(long, long.toUpperCase()).marks).toBe(1);
  expect(compare('1'.repeat(20_000), '1'.repeat(20_000)).marks).toBe(1);
  expect(compare('1 '.repeat(10_000), 'x').marks).toBeNull();
  expect(compare(' ,'.repeat(10_000), "' ".repeat(10_000)).marks).toBeNull();
});
