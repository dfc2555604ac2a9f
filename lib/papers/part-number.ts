import { numberOfLetter, numberOfRoman } from '#lib/syllabus/outline/roman.ts';

/**
 * Numbers of parts as papers print them (common practice): questions by numbers, parts by letters, and parts of those by
 * small Roman numerals: "3", "3 (b)", "3(b)(ii)", "Q3 b ii", "3.2", "03.2", "A4".
 */
const LEAD = /^\s*(?:questions?|q\.?|no\.?|part)\s*(?=[\dA-Z(])/i;

// A step is a number, a letter with a number ("A4"), or a letter or Roman numeral, in brackets or not.
const FIRST =
  /^\s*(?:\((\d{1,2})\)|([A-Z]?\d{1,3})(?![\d%°])|\(([a-z]|[ivx]{1,5})\)|([a-z]|[ivx]{1,5})\))(?:[):]|\.(?!\d))?/i;
const BRACKETED = /^\s*(?:\(\s*([a-z]|[ivx]{1,5}|\d{1,2})\s*\)|([a-z]|[ivx]{1,5})\))[.:]?/i;
/** Without brackets or spaces: "3b", "3bii", "3.2". */
const CLOSE =
  /^(?:([ivx]{2,5}|[a-z])(?![a-z\d])|([a-z])(?=[ivx]{1,5}(?![a-z\d]))|\.(\d{1,2})(?![\d%°]))[.:]?/i;
/** Steps without brackets but with spaces between them, as in a cell that holds nothing but a number. */
const SPACED = /^\s+([a-z]|[ivx]{1,5})(?=\s|$|\(|\))\)?/i;

/** Papers go three levels deep, or four with a section before. */
const MOST_STEPS = 5;

/** The number at the start of a text. */
export interface Numbered {
  /** Its steps, in small letters and without brackets: ["3", "b", "ii"]. */
  steps: string[];
  /** What stands behind it. */
  rest: string;
}

/**
 * The number of a part at the start of a text; null where none is.
 * @param isAlone the text is meant to be a number and nothing else, so that "3 b ii" is one
 */
export function readNumber(text: string, isAlone = false): Numbered | null {
  const lead = LEAD.exec(text)?.[0] ?? '';
  // Boards print boxes with one digit each: "0 3 . 2".
  let rest = text
    .slice(lead.length)
    .replace(
      /^\s*0\s(\d)(?=\s*(?:\.|$|\s\D))(\s*\.\s*(?=\d))?/,
      (_, digit, point) => `0${digit}${point ? '.' : ''}`,
    );
  const first = FIRST.exec(rest);
  if (!first) return null;
  const steps = [first.slice(1).find(Boolean)!];
  rest = rest.slice(first[0].length);
  for (let next; steps.length < MOST_STEPS && (next = nextStep(rest, isAlone));) {
    steps.push(next.slice(1).find(Boolean)!);
    rest = rest.slice(next[0].length);
  }
  // "3 (b)" is a number of its own; "3rd", "2x" and "10,000" begin a sentence.
  if (/^(?:[\p{L}\d]|,\d)/u.test(rest)) return null;
  return { steps: steps.map(tidyStep), rest: rest.trimStart() };
}

const nextStep = (rest: string, isAlone: boolean): RegExpExecArray | null =>
  BRACKETED.exec(rest) ?? CLOSE.exec(rest) ?? (isAlone ? SPACED.exec(rest) : null);

/** How a number is written in the deck: "3 (b) (ii)"; a decimal one keeps its point. */
export function writeNumber(steps: readonly string[]): string {
  return steps.reduce((all, step) => {
    if (all === '') return isBare(step) ? step : `(${step})`;
    return /^\d+$/.test(step) ? `${all}.${step}` : `${all} (${step})`;
  }, '');
}

/** What two ways to write the same number have in common. */
export const numberKey = (number: string): string => {
  const read = readNumber(number, true);
  return read && read.rest === '' ? read.steps.join(' ') : number.toLowerCase().replace(/\s+/g, ' ').trim();
};

/**
 * A number made whole from the one before it: after "3 (b) (i)" a part that prints "(ii)" alone is 3 (b) (ii), and
 * "(c)" is 3 (c). "(i)" is the ninth letter straight after "(h)", and Roman one elsewhere; after 3 (i), "(ii)" is 3 (ii).
 *
 * @param before the steps of the part before, whole; null at the start of the paper
 */
export function wholeNumber(steps: readonly string[], before: readonly string[] | null): string[] {
  const first = steps[0];
  if (first === undefined || !before || isBare(first)) return [...steps];
  const level = levelOf(first, before);
  const above = before.slice(0, Math.min(level, before.length));
  return [...above, ...steps];
}

/** How many steps stand above it: it goes on with the innermost list that it can, or begins one. */
function levelOf(step: string, before: readonly string[]): number {
  const last = before.length - 1;
  for (let level = last; level > 0; level--) if (follows(step, before[level]!, level)) return level;
  const isFirst = step === 'i' || (step === 'a' && isRoman(before[last]!));
  if (isFirst) return last === 2 ? 2 : before.length;
  return numberOfRoman(step) === null ? 1 : 2;
}

/** Whether a step is the next in a list. Below the lettered parts, "(i)" is a Roman one. */
function follows(step: string, one: string, level: number): boolean {
  const [roman, letter] = [numberOfRoman(one), numberOfLetter(one)];
  if (roman !== null && numberOfRoman(step) === roman + 1) return true;
  return letter !== null && numberOfLetter(step) === letter + 1 && (level === 1 || roman === null);
}

const isRoman = (step: string): boolean => numberOfRoman(step) !== null;

/** Whether a step is written without brackets at the start of a number. */
const isBare = (step: string): boolean => /\d/.test(step);

const tidyStep = (step: string): string => (/^[A-Z]\d/.test(step) ? step : step.toLowerCase());
