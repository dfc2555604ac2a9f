/**
 * A unit as a product of base units: the exponents of metre, kilogram, second, ampere, kelvin, mole, candela, and of
 * signs that are no such product (%, °C and the like, which equal nothing but themselves), with a factor.
 */
export interface Unit {
  factor: number;
  powers: ReadonlyMap<string, number>;
}

/** SI prefixes (BIPM, The International System of Units, 9th edition, table 7). */
const PREFIXES: Readonly<Record<string, number>> = {
  G: 1e9,
  M: 1e6,
  k: 1e3,
  h: 1e2,
  d: 1e-1,
  c: 1e-2,
  m: 1e-3,
  µ: 1e-6,
  μ: 1e-6,
  u: 1e-6,
  n: 1e-9,
  p: 1e-12,
  T: 1e12,
};

const base = (sign: string, factor = 1): Unit => ({ factor, powers: new Map([[sign, 1]]) });
const derived = (factor: number, powers: Record<string, number>): Unit => ({
  factor,
  powers: new Map(Object.entries(powers)),
});

/** Units that take prefixes (same source, tables 2 and 4, and those in use with them, table 8). */
const PREFIXED: Readonly<Record<string, Unit>> = {
  m: base('m'),
  g: base('kg', 1e-3),
  s: base('s'),
  A: base('A'),
  K: base('K'),
  mol: base('mol'),
  cd: base('cd'),
  Hz: derived(1, { s: -1 }),
  N: derived(1, { kg: 1, m: 1, s: -2 }),
  Pa: derived(1, { kg: 1, m: -1, s: -2 }),
  J: derived(1, { kg: 1, m: 2, s: -2 }),
  W: derived(1, { kg: 1, m: 2, s: -3 }),
  C: derived(1, { A: 1, s: 1 }),
  V: derived(1, { kg: 1, m: 2, s: -3, A: -1 }),
  Ω: derived(1, { kg: 1, m: 2, s: -3, A: -2 }),
  F: derived(1, { kg: -1, m: -2, s: 4, A: 2 }),
  T: derived(1, { kg: 1, s: -2, A: -1 }),
  Wb: derived(1, { kg: 1, m: 2, s: -2, A: -1 }),
  H: derived(1, { kg: 1, m: 2, s: -2, A: -2 }),
  L: derived(1e-3, { m: 3 }),
  l: derived(1e-3, { m: 3 }),
  bar: derived(1e5, { kg: 1, m: -1, s: -2 }),
  eV: derived(1.602_176_634e-19, { kg: 1, m: 2, s: -2 }),
  t: base('kg', 1e3),
};

const PLAIN: Readonly<Record<string, Unit>> = {
  min: base('s', 60),
  h: base('s', 3600),
  d: base('s', 86_400),
  '%': base('%'),
  '°C': base('°C'),
  '°': base('°'),
  rad: base('rad'),
  psu: base('psu'),
};

/** Written out, in the singular; an s at the end is taken off first. */
const WORDS: Readonly<Record<string, string>> = {
  metre: 'm',
  meter: 'm',
  kilometre: 'km',
  kilometer: 'km',
  centimetre: 'cm',
  centimeter: 'cm',
  millimetre: 'mm',
  millimeter: 'mm',
  gram: 'g',
  kilogram: 'kg',
  tonne: 't',
  second: 's',
  minute: 'min',
  hour: 'h',
  day: 'd',
  ampere: 'A',
  amp: 'A',
  kelvin: 'K',
  mole: 'mol',
  newton: 'N',
  pascal: 'Pa',
  kilopascal: 'kPa',
  joule: 'J',
  kilojoule: 'kJ',
  watt: 'W',
  kilowatt: 'kW',
  volt: 'V',
  ohm: 'Ω',
  coulomb: 'C',
  litre: 'L',
  liter: 'L',
  percent: '%',
  degree: '°',
  radian: 'rad',
};

/**
 * Reads a unit such as m s^-1, m/s, kg·m^-3, N m or "metres per second", with plain signs. Null where a part is not known:
 * so a text is not taken for a unit by chance. Case counts.
 */
export function readUnit(text: string): Unit | null {
  const terse = text
    .replace(/degrees? celsius|° ?C\b/gi, '°C')
    .replace(/ ?\bper\b ?/gi, '/')
    .replace(/ ?([·/^]) ?/g, '$1');
  if (terse === '') return null;
  const powers = new Map<string, number>();
  let factor = 1;
  let sign = 1;
  // After a slash all counts below the line, as in J/kg K, where no second slash comes.
  for (const part of terse.split(/([·/ ])/)) {
    if (part === '/') {
      if (sign < 0) return null;
      sign = -1;
    }
    if (/^[·/ ]?$/.test(part)) continue;
    const read = readPart(part);
    if (!read) return null;
    const power = sign * read.power;
    factor *= read.unit.factor ** power;
    for (const [name, exponent] of read.unit.powers)
      powers.set(name, (powers.get(name) ?? 0) + exponent * power);
  }
  for (const [name, exponent] of powers) if (exponent === 0) powers.delete(name);
  return { factor, powers };
}

/** Whether both measure the same kind of thing. */
export const sameKind = (a: Unit, b: Unit): boolean =>
  a.powers.size === b.powers.size && [...a.powers].every(([name, power]) => b.powers.get(name) === power);

function readPart(part: string): { unit: Unit; power: number } | null {
  const [, name, power = '1'] = /^([^\d^+-]+)\^?\(?([+-]?\d+)?\)?$/.exec(part) ?? [];
  if (name === undefined || Math.abs(Number(power)) > 12) return null;
  const word = name.toLowerCase();
  const unit = readSign(own(WORDS, word) ?? own(WORDS, word.replace(/s$/, '')) ?? name);
  return unit && { unit, power: Number(power) };
}

function readSign(sign: string): Unit | null {
  const whole = own(PLAIN, sign) ?? own(PREFIXED, sign);
  if (whole) return whole;
  const prefix = own(PREFIXES, sign[0]!);
  const rest = own(PREFIXED, sign.slice(1));
  return prefix !== undefined && rest ? { ...rest, factor: rest.factor * prefix } : null;
}

/** What a table itself holds: not names such as "constructor", which every object has. */
function own<T>(table: Readonly<Record<string, T>>, key: string): T | undefined {
  return Object.hasOwn(table, key) ? table[key] : undefined;
}
