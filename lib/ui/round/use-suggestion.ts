import { useEffect, useState } from 'preact/hooks';
import type { Item } from '#lib/model/item.ts';
import { judgementOf } from '#lib/model/attempt.ts';
import type { Reason, Suggestion } from '#lib/recall/compare-answer.ts';
import { marksForUncovered } from '#lib/recall/uncover-steps.ts';
import { type TextName, t } from '../text.ts';
import { labelOf } from './marks-buttons.tsx';

/** How an item was answered. */
export interface Answered {
  /** What was typed, or ''. */
  typed: string;
  /** Steps of a line's rest that were uncovered as a help, of how many; null for a question. */
  help: { uncovered: number; of: number } | null;
}

/** Marks that are suggested, or none, and why, in words. The student decides. */
export interface SuggestedMarks {
  marks: number | null;
  words: string;
}

const load = () => import('./compare-typed.ts');

/** Brings what compares typed answers, ahead of need. */
export const loadComparison = (): void => void load().catch(() => undefined);

/** What the answer suggests, once it is known; null for nothing. */
export function useSuggestion(item: Item, { typed, help }: Answered): SuggestedMarks | null {
  const byHelp = help && (help.uncovered > 0 || typed.trim() === '') ? suggestedByHelp(item, help) : null;
  const compares = byHelp === null && typed.trim() !== '';
  const [byTyping, setByTyping] = useState<SuggestedMarks | null>(null);
  const { covers, marks } = item;
  useEffect(() => {
    setByTyping(null);
    if (!compares) return;
    let gone = false;
    load().then(
      ({ compareTyped }) => {
        if (!gone) setByTyping(inWords(compareTyped(typed, covers, marks), marks));
      },
      // Without it both answers are laid side by side all the same.
      () => undefined,
    );
    return () => {
      gone = true;
    };
  }, [compares, typed, covers, marks]);
  return byHelp ?? byTyping;
}

function suggestedByHelp(item: Item, { uncovered, of }: NonNullable<Answered['help']>): SuggestedMarks {
  const marks = marksForUncovered(uncovered, of, item.marks);
  const why = uncovered === 0 ? t('suggestUnaided') : t('suggestSteps', uncovered, of);
  return withMarks(marks, why, item.marks);
}

const WORDS = {
  same: 'suggestSame',
  sameButForm: 'suggestSameButForm',
  sameNumber: 'suggestSameNumber',
  sameInOtherUnit: 'suggestOtherUnit',
  sameMaths: 'suggestSameMaths',
  sameTerms: 'suggestAllTerms',
  someTerms: 'suggestSomeTerms',
  unitMissing: 'suggestUnitMissing',
  nothingTyped: 'suggestCannotTell',
  cannotTell: 'suggestCannotTell',
} as const satisfies Record<Reason, TextName>;

function inWords({ marks, reason, terms }: Suggestion, outOf: number): SuggestedMarks {
  const why = t(WORDS[reason], ...(terms ? [terms.found, terms.of] : []));
  return marks === null ? { marks, words: why } : withMarks(marks, why, outOf);
}

const withMarks = (marks: number, why: string, outOf: number): SuggestedMarks => ({
  marks,
  words: t('suggested', why, labelOf({ marks, judgement: judgementOf({ marks, outOf }) }, outOf)),
});
