import { normaliseMathml } from '#lib/capture/maths/normalise-mathml.ts';
import { texToMathml } from '#lib/capture/maths/tex-to-mathml.ts';
import { type Suggestion, compareAnswer } from '#lib/recall/compare-answer.ts';

/** A formula in the one form that all that read the same have; null where it does not render. */
function formOf(tex: string): string | null {
  const made = texToMathml({ tex, display: false });
  return 'mathml' in made ? normaliseMathml(made.mathml) : null;
}

/** What a typed answer suggests. The reader of TeX comes with it: to be loaded when something is typed. */
export function compareTyped(typed: string, kept: string, outOf: number): Suggestion {
  const sameMaths = (one: string, other: string): boolean => {
    const form = formOf(one);
    return form !== null && form === formOf(other);
  };
  return compareAnswer(typed, kept, { outOf, sameMaths });
}
