import { formulaRanges } from '#lib/notes/split-tex.ts';
import { choicesOf } from './marks.ts';

/** How much is uncovered at a time. */
export type StepSize = 'word' | 'clause';

/** A word with the white space after it; or the white space that a text begins with. */
const WORD = /\s*\S+\s*|\s+/gu;

/**
 * A clause with its punctuation and the white space after it: up to a comma, semicolon, colon, dash, full stop,
 * question or exclamation mark before white space. A full stop after a single letter (e.g., i.e., a name) ends none.
 */
const CLAUSE = /[\s\S]+?(?:(?:[,;:!?…]|(?<![\s.(]\p{L}|^\p{L})\.)["')\]”’]*\s+|\s[–—-]\s+|$)/gu;

/** A mark that closes what stands before it, with the white space after it. */
const CLOSING = /^[.,;:!?…)\]}”’"']+(?:\s+|$)/u;

/**
 * The steps in which a text is uncovered. A formula in TeX is one step, with punctuation that follows it. Joined
 * again, the steps are the text.
 */
export function uncoverSteps(text: string, size: StepSize): string[] {
  const steps: string[] = [];
  let at = 0;
  const words = (to: number): void => {
    let part = text.slice(at, to);
    // What closes a formula belongs to it.
    const closing = steps.length > 0 ? CLOSING.exec(part)?.[0] : undefined;
    if (closing) {
      steps[steps.length - 1] += closing;
      part = part.slice(closing.length);
    }
    steps.push(...(part.match(size === 'word' ? WORD : CLAUSE) ?? []));
    at = to;
  };
  for (const { from, to } of formulaRanges(text)) {
    words(from);
    steps.push(text.slice(from, to));
    at = to;
  }
  words(text.length);
  return joinedBlanks(steps);
}

/** Steps of white space alone go to the one before them, or after. */
function joinedBlanks(steps: readonly string[]): string[] {
  const joined: string[] = [];
  let ahead = '';
  for (const step of steps) {
    if (step.trim() !== '') {
      joined.push(ahead + step);
      ahead = '';
    } else if (joined.length > 0) joined[joined.length - 1] += step;
    else ahead += step;
  }
  if (ahead !== '') joined.push(ahead);
  return joined;
}

/**
 * Marks to suggest by how much had to be uncovered before the rest was known: full for nothing, none for all of it;
 * between them the part that was known, rounded to marks that can be given, and neither full nor none where there is
 * a choice between.
 * @param uncovered steps that were uncovered as a help, 0 to all
 * @param steps how many there are, at least 1
 * @param outOf marks there are
 */
export function marksForUncovered(uncovered: number, steps: number, outOf: number): number {
  if (uncovered <= 0) return outOf;
  if (uncovered >= steps) return 0;
  const known = outOf * (1 - uncovered / steps);
  const between = choicesOf(outOf).filter(({ judgement }) => judgement === 'part');
  return between.reduce(
    (best, { marks }) => (Math.abs(marks - known) < Math.abs(best - known) ? marks : best),
    between[0]!.marks,
  );
}
