import { readUnit, type Unit } from './units.ts';

/** A number with its unit, as it was read. */
export interface Quantity {
  value: number;
  /** What the number may be as well: "1,000" is a thousand, or one in a land of decimal commas. Null for nothing else. */
  otherValue: number | null;
  /** Null where no unit stands there. */
  unit: Unit | null;
}

/** A sign; figures with their separators; a power of ten. */
const NUMBER =
  /^([+-]?) ?(\d(?:[\d.,']|(?<=\d) (?=\d{3}(?!\d)))*|[.,]\d+)(?: ?(?:[eE] ?([+-]?\d+)|[·x] ?10(?:\^ ?\(?([+-]?\d+)\)?)))?(?=$|[^\d.,'])/u;

/**
 * Reads a text with plain signs that is a number with or without a unit, and nothing else: "1 000,5 kg", "1.0005e3",
 * "-2·10^-3 m s^-1". Null for any other.
 */
export function readQuantity(text: string): Quantity | null {
  // A name with an equals sign before the number is no part of it: v = 3 m/s.
  const right = /^\p{L}[\p{L}\d_]{0,3} ?= ?(.*)$/u.exec(text)?.[1] ?? text;
  const found = NUMBER.exec(right);
  if (!found) return null;
  const [whole, sign, figures, e, power] = found;
  const values = readFigures(figures!.replace(/[.,']+$/, ''));
  if (!values) return null;
  const rest = right
    .slice(whole.length)
    .replace(/[.,;]$/, '')
    .trim();
  const unit = rest === '' ? null : readUnit(rest);
  if (rest !== '' && !unit) return null;
  const scaled = (value: string): number => Number(`${sign}${value}e${Number(e ?? power ?? 0)}`);
  const other = values.other === null ? null : scaled(values.other);
  return { value: scaled(values.value), otherValue: other, unit };
}

/** Figures as a decimal number with a point. Of "1,000" and "1.000" the English reading is the first. */
function readFigures(figures: string): { value: string; other: string | null } | null {
  if (/^\d+$/.test(figures)) return { value: figures, other: null };
  const groups = /^\d{1,3}(?:([ ',.])\d{3})(?:\1\d{3})*(?:([.,])(\d+))?$/.exec(figures);
  const decimal = /^(\d*)([.,])(\d+)$/.exec(figures);
  if (decimal) {
    const value = `${decimal[1] || 0}.${decimal[3]}`;
    if (!groups) return { value, other: null };
    const grouped = figures.replace(/[.,]/, '');
    return decimal[2] === ',' ? { value: grouped, other: value } : { value, other: grouped };
  }
  if (!groups || groups[1] === groups[2]) return null;
  const [, separator, , fraction] = groups;
  const head = fraction === undefined ? figures : figures.slice(0, -fraction.length - 1);
  const digits = head.replaceAll(separator!, '');
  return { value: fraction === undefined ? digits : `${digits}.${fraction}`, other: null };
}

/** How far two values may lie apart, as a part of them, and be the same: rounding of the computer's own numbers. */
const SLACK = 1e-9;

const same = (a: number, b: number): boolean => Math.abs(a - b) <= SLACK * Math.max(Math.abs(a), Math.abs(b));

export type Likeness = 'same' | 'sameInOtherUnit' | 'noUnit' | 'differs';

/** How two quantities compare. Only a like value in a like unit is the same; "1,000" counts as its English reading. */
export function likeness(one: Quantity, other: Quantity): Likeness {
  if (!one.unit !== !other.unit) return 'noUnit';
  if (!one.unit || !other.unit) return same(one.value, other.value) ? 'same' : 'differs';
  if (one.unit.powers.size !== other.unit.powers.size) return 'differs';
  for (const [name, power] of one.unit.powers) if (other.unit.powers.get(name) !== power) return 'differs';
  if (!same(one.value * one.unit.factor, other.value * other.unit.factor)) return 'differs';
  return same(one.value, other.value) ? 'same' : 'sameInOtherUnit';
}
