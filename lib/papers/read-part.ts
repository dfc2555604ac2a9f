import { MOST_MARKS } from '#lib/model/mark-count.ts';
import { readNumber, wholeNumber, writeNumber } from './part-number.ts';

/**
 * What was read with a guess only, or not at all:
 * - `noNumber`, `noMarks`: none could be found;
 * - `bareMarks`: the marks are a number in round brackets at the end, which might be the number of an equation;
 * - `severalMarks`: marks stand in several places, so that the frame may hold several parts: none are taken;
 * - `totalOnly`: the marks are those printed as the total of the question.
 */
export type PartRemark = 'noNumber' | 'noMarks' | 'bareMarks' | 'severalMarks' | 'totalOnly';

/** A part as it was read from the text of a framed region. */
export interface ReadPart {
  /** As it is written in the deck; empty where none was found. */
  number: string;
  /** The steps of the number, to make the next one whole. */
  steps: string[];
  /** Null where none, or none that is sure, were found. */
  marks: number | null;
  /** The text without its number and marks. */
  text: string;
  /** Marks that stand in the text, in order. */
  found: number[];
  remarks: PartRemark[];
}

const COUNT = String.raw`(\d{1,3}(?:\.5)?)`;
const UNIT = String.raw`(?:marks?|pts?|points?)`;
const TOTAL = new RegExp(
  String.raw`[([]?[ \t]{0,3}total\b[^\n()[\]]{0,40}?[:=]?\s*${COUNT}\s*${UNIT}?\s*[)\]]?[.\s]*$`,
  'gim',
);
/** "[4]", "[4 marks]", "(4 marks)", "4 marks" at the end of a line: common practice of exam boards. */
const MARKS = new RegExp(
  String.raw`(?:\[\s*${COUNT}\s*${UNIT}?\s*\]|\(\s*${COUNT}\s*${UNIT}\s*\)|(?<=\s)${COUNT}\s+marks?)[.\s_]*$`,
  'gim',
);
const BARE = new RegExp(String.raw`(?<=[\s.?!_])\(\s*${COUNT}\s*\)[.\s_]*$`);

/**
 * Reads number, marks and text of a part, as far as they can be told.
 *
 * @param text of the region, line by line as it stands on the page
 * @param before the steps of the part before it, to make "(ii)" whole; null where it is the first
 */
export function readPart(text: string, before: readonly string[] | null = null): ReadPart {
  const remarks: PartRemark[] = [];
  const numbered = readNumber(text);
  const steps = numbered ? wholeNumber(numbered.steps, before) : [];
  if (!numbered) remarks.push('noNumber');
  const { marks, found, left } = readMarks(numbered?.rest ?? text, remarks);
  return { number: writeNumber(steps), steps, marks, text: left.trim(), found, remarks };
}

function readMarks(
  text: string,
  remarks: PartRemark[],
): { marks: number | null; found: number[]; left: string } {
  const totals = countsIn(text, TOTAL);
  const withoutTotal = text.replace(TOTAL, '').trimEnd();
  const found = countsIn(withoutTotal, MARKS);
  if (found.length > 1) {
    remarks.push('severalMarks');
    return { marks: null, found, left: text };
  }
  if (found.length === 1) return { marks: found[0]!, found, left: withoutTotal.replace(MARKS, '') };
  const bare = BARE.exec(withoutTotal);
  if (bare && isCount(Number(bare[1]))) {
    remarks.push('bareMarks');
    return { marks: Number(bare[1]), found: [Number(bare[1])], left: withoutTotal.replace(BARE, '') };
  }
  if (totals.length === 1) {
    remarks.push('totalOnly');
    return { marks: totals[0]!, found: totals, left: withoutTotal };
  }
  remarks.push('noMarks');
  return { marks: null, found: totals, left: text };
}

const countsIn = (text: string, pattern: RegExp): number[] =>
  [...text.matchAll(pattern)].map((match) => Number(match.slice(1).find(Boolean))).filter(isCount);

const isCount = (marks: number): boolean => marks > 0 && marks <= MOST_MARKS;
