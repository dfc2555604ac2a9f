import { readUnit, sameKind, type Unit } from './units.ts';

/** A number with its unit, as it was read. */
export interface Quantity {
  /** The symbol before an equals sign, as v in v = 3 m/s; null without one. */
  symbol: string | null;
  value: number;
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
  const [, symbol = null, right = text] = /^(\p{L}[\p{L}\d_]{0,3}) ?= ?(.*)$/u.exec(text) ?? [];
  const found = NUMBER.exec(right);
  if (!found) return null;
  const [whole, sign, figures, e, power] = found;
  const decimal = readFigures(figures!.replace(/[.,']+$/, ''));
  if (decimal === null) return null;
  const rest = right
    .slice(whole.length)
    .replace(/[.,;]$/, '')
    .trim();
  const unit = rest === '' ? null : readUnit(rest);
  if (rest !== '' && !unit) return null;
  return { symbol, value: Number(`${sign}${decimal}e${Number(e ?? power ?? 0)}`), unit };
}

/**
 * Figures as a decimal number with a point; null where the separators fit no way of writing. "1,000" is read as in
 * English, a thousand, and "1.000" is one.
 */
function readFigures(figures: string): string | null {
  if (/^\d+$/.test(figures)) return figures;
  const thousands = /^[1-9]\d{0,2}(?:,\d{3})+$/.test(figures);
  const decimal = /^(\d*)[.,](\d+)$/.exec(figures);
  if (decimal && !thousands) return `${decimal[1] || 0}.${decimal[2]}`;
  const groups = /^([1-9]\d{0,2}([ ',.])\d{3}(?:\2\d{3})*)(?:([.,])(\d+))?$/.exec(figures);
  if (!groups || groups[2] === groups[3]) return null;
  const [, head, separator, , fraction] = groups;
  const digits = head!.replaceAll(separator!, '');
  return fraction === undefined ? digits : `${digits}.${fraction}`;
}

/** How far two values may lie apart, as a part of them, and be the same: rounding of the computer's own numbers. */
const SLACK = 1e-9;

const same = (a: number, b: number): boolean => Math.abs(a - b) <= SLACK * Math.max(Math.abs(a), Math.abs(b));

export type Likeness = 'same' | 'sameInOtherUnit' | 'noUnit' | 'differs';

/** How two quantities compare. Only a like value in a like unit is the same; "1,000" counts as its English reading. */
export function likeness(one: Quantity, other: Quantity): Likeness {
  if (one.symbol !== null && other.symbol !== null && one.symbol !== other.symbol) return 'differs';
  if (!one.unit !== !other.unit) return 'noUnit';
  if (!one.unit || !other.unit) return same(one.value, other.value) ? 'same' : 'differs';
  if (!sameKind(one.unit, other.unit)) return 'differs';
  if (!same(one.value * one.unit.factor, other.value * other.unit.factor)) return 'differs';
  return same(one.value, other.value) ? 'same' : 'sameInOtherUnit';
}
