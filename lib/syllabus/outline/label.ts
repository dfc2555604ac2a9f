import { numberOfLetter, numberOfRoman } from './roman.ts';

/** One way to read a list label: "(c)" is the third of a lettered list, "(i)" the ninth or the first of a Roman one. */
export interface Reading {
  /** Labels of one list have one family: the sort of number, its case and its brackets. */
  family: string;
  value: number;
}

/** The numbering at the start of a row. */
export interface Label {
  code: string;
  /** The steps of a number that says by itself where it belongs: "A1.2" is A, 1, 2. Null for list labels. */
  path: readonly string[] | null;
  /** The ways to read its last step. */
  readings: readonly Reading[];
  /** For "Unit 3" and the like, the word. */
  word: string | null;
  /** False where it could as well be the row's first word, as in "2 types of wave". */
  sure: boolean;
}

export interface Labelled {
  label: Label;
  rest: string;
}

const WORDS = new Set(
  'area block chapter component lecture module option paper part section theme topic unit week'.split(' '),
);
const WORDED =
  /^([A-Za-z]+)\s+(\d{1,3}(?:\.\d{1,3}){0,3}|[A-Z]|[IVX]{1,5})(?!\.?\d)(?:\s*[:.)–—-]\s*|\s+(?=[A-Z\d])|\s*$)(.*)$/;
const BRACKETED = /^(\((\d{1,3}|[a-z]|[ivx]{1,6})\))\s*(.*)$/i;
const DOTTED =
  /^((?:[A-Z]{1,3}\d{0,3}|\d{1,3})(?:\.(?:\d{1,3}|[a-z]{1,4}|[A-Z]))+(?:[a-z]|\([a-z]{1,4}\))?)[.):]?(?:\s+(.*))?$/;
const LETTERED_NUMBER =
  /^([A-Z]{1,3}\d{1,3}|\d{1,3}(?:[a-z]|\([a-z]{1,4}\)))(?:[.):](?:\s+|$)|\s{2,}|\t|\s+(?=[A-Z]))(.*)$/;
const POINTED = /^((\d{1,3}|[a-z]|[ivx]{1,6})([.):]))(?:\s+(.*))?$/i;
const BARE = /^(\d{1,3}|[a-z]|[ivx]{1,6})(\s+)(.*)$/i;

/** The longest number that is taken for one. */
const LONGEST_CODE = 40;

/** The numbering at the start of a row's text; null where there is none. */
export function readLabel(text: string): Labelled | null {
  const labelled =
    readWorded(text) ?? readBracketed(text) ?? readPath(text) ?? readPointed(text) ?? readBare(text);
  return labelled && labelled.label.code.length <= LONGEST_CODE ? labelled : null;
}

function readWorded(text: string): Labelled | null {
  const [, word, number, rest] = WORDED.exec(text) ?? [];
  if (!word || !number || !WORDS.has(word.toLowerCase())) return null;
  const code = rest ? `${word} ${number}` : '';
  const path = number.split('.').map(step);
  return {
    label: { code, path, readings: [], word: word.toLowerCase(), sure: true },
    rest: rest || text.trim(),
  };
}

function readBracketed(text: string): Labelled | null {
  const [, code, inner, rest = ''] = BRACKETED.exec(text) ?? [];
  if (!code || !inner) return null;
  const readings = readingsOf(inner, '()');
  return readings.length > 0 ? { label: listLabel(code, readings, true), rest } : null;
}

function readPath(text: string): Labelled | null {
  const [, code, rest = ''] = DOTTED.exec(text) ?? LETTERED_NUMBER.exec(text) ?? [];
  if (!code) return null;
  const path = (code.match(/\d+|[A-Za-z]+/g) ?? []).map(step);
  return { label: { code, path, readings: [], word: null, sure: true }, rest };
}

function readPointed(text: string): Labelled | null {
  const [, , inner, point, rest = ''] = POINTED.exec(text) ?? [];
  if (!inner || !point) return null;
  const readings = readingsOf(inner, point === ')' ? ')' : '.');
  if (readings.length === 0) return null;
  const path = point !== ')' && /^(\d+|[A-Z])$/.test(inner) ? [step(inner)] : null;
  return { label: { ...listLabel(inner, readings, true), path }, rest };
}

function readBare(text: string): Labelled | null {
  const [, inner, space, rest] = BARE.exec(text) ?? [];
  if (!inner || !space || !rest) return null;
  const readings = readingsOf(inner, '.');
  const trust = trustInBare(inner, space, rest);
  if (trust === 'none' || readings.length === 0) return null;
  const label = listLabel(inner, readings, trust === 'sure');
  return { label: { ...label, path: /^\d/.test(inner) ? [step(inner)] : null }, rest };
}

/** How far a label without a point or bracket can be told from a first word. */
function trustInBare(inner: string, space: string, rest: string): 'sure' | 'unsure' | 'none' {
  if (space.length > 1 || space === '\t') return 'sure';
  if (/^(?:i|[ivx]{2,}|[IVX]{2,})$/.test(inner)) return 'sure';
  if (/^\d/.test(inner)) return /^[^\p{Ll}\d%.,°×+=<>≤≥≈/-]/u.test(rest) ? 'sure' : 'unsure';
  return /^[vx]$/.test(inner) ? 'unsure' : 'none';
}

const listLabel = (code: string, readings: Reading[], sure: boolean): Label => ({
  code,
  path: null,
  readings,
  word: null,
  sure,
});

/** Steps are compared as text: "01" is "1". */
const step = (text: string): string => (/^\d+$/.test(text) ? String(Number(text)) : text);

function readingsOf(inner: string, brackets: string): Reading[] {
  if (/^\d+$/.test(inner)) return [{ family: `1${brackets}`, value: Number(inner) }];
  const isSmall = inner === inner.toLowerCase();
  const readings: Reading[] = [];
  const roman = numberOfRoman(inner);
  if (roman !== null) readings.push({ family: `${isSmall ? 'i' : 'I'}${brackets}`, value: roman });
  const letter = numberOfLetter(inner);
  if (letter !== null) readings.push({ family: `${isSmall ? 'a' : 'A'}${brackets}`, value: letter });
  return readings;
}
