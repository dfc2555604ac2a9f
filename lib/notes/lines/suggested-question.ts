import { type Line, isAsked } from '#lib/model/item.ts';
import { type Draft, draftQuestions } from '../draft/draft-questions.ts';
import { GAP } from '../draft/patterns.ts';

/**
 * The question that a line suggests: what its sentence defines or states, else its lead with its rest as the answer.
 * Null where nothing of it is covered.
 */
export function suggestedQuestion(
  line: Pick<Line, 'lead' | 'rest'>,
): Pick<Draft, 'prompt' | 'answer'> | null {
  if (!isAsked({ ...line, leftOut: null })) return null;
  const lead = line.lead.replace(/[\s:–—-]+$/u, '');
  if (lead === '') return null;
  // "The speed of long waves is | ..." is a sentence; "Long waves: | ..." is a heading and what belongs to it.
  const isHeading = /[:–—-]\s*$/u.test(line.lead);
  const said = isHeading ? undefined : draftQuestions(`${line.lead} ${line.rest}`)[0];
  if (said) return { prompt: said.prompt, answer: said.answer };
  const prompt = /[?？]$/u.test(lead) ? lead : isHeading ? `${lead}?` : `${lead} ${GAP}`;
  return { prompt, answer: line.rest };
}
