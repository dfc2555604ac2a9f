import { readNumber, wholeNumber, writeNumber } from '../part-number.ts';

/** The number of a row. */
export interface RowNumber {
  /** As it is written in the deck; empty where the row has none. */
  text: string;
  /** The question that it belongs to; empty where that is not known. */
  question: string;
  /** It was made whole from the rows above. */
  isFromAbove: boolean;
}

/** Gives the number of each row from its cells, the outermost first, from the top to the end of the table. */
export type NumberReader = (cells: readonly string[]) => RowNumber;

/** Makes a reader that fills up what merged cells and short numbers leave out. */
export function numberReader(): NumberReader {
  let before: string[] | null = null;
  return (cells) => {
    const filled = cells.filter((cell) => cell !== '');
    if (filled.length === 0) return { text: '', question: before?.[0] ?? '', isFromAbove: false };
    const steps = filled.flatMap(stepsOf);
    // What cannot be read stands as it is written, and nothing is made whole from it.
    if (steps.some((step) => step === null)) {
      before = null;
      return { text: filled.join(' '), question: '', isFromAbove: false };
    }
    const whole = wholeNumber(steps as string[], before);
    before = whole;
    return {
      text: writeNumber(whole),
      question: whole[0] ?? '',
      isFromAbove: whole.length > steps.length,
    };
  };
}

/** The steps of a cell; null in them for what is no number. */
function stepsOf(cell: string): (string | null)[] {
  const read = readNumber(cell, true) ?? readNumber(`(${cell})`, true);
  return read?.rest === '' ? read.steps : [null];
}
