import type { Line } from '#lib/model/item.ts';
import { formulaRanges } from '../split-tex.ts';

/** A line as it is typed: one text, of which the first part is the lead. */
export interface LineText {
  text: string;
  /** Where the lead ends, in UTF-16 units; the length of the text where nothing is covered. */
  leadEnd: number;
}

type Parts = Pick<Line, 'lead' | 'rest'>;

/** A line's lead and rest as one text, with one space between them. */
export function textOfLine({ lead, rest }: Parts): LineText {
  if (lead === '' || rest === '') return { text: lead + rest, leadEnd: lead.length };
  return { text: `${lead} ${rest}`, leadEnd: lead.length };
}

/** The lead and rest of a text. Line breaks are kept; white space around both is not. */
export const partsOf = ({ text, leadEnd }: LineText): Parts => ({
  lead: text.slice(0, leadEnd).trim(),
  rest: text.slice(leadEnd).trim(),
});

/**
 * Where the lead ends after the text was changed at one place: it moves with the words around it. What is typed at the
 * very end of the lead belongs to the rest, if there is one.
 * @param caret where the caret stands afterwards: what follows it was not changed
 */
export function movedEnd(before: LineText, after: string, caret: number): number {
  const { text, leadEnd } = before;
  // A lead without a rest grows with what is typed.
  if (leadEnd >= text.trimEnd().length) return suggestedEnd(after) ?? after.length;
  let tail = 0;
  const longest = Math.min(text.length, after.length - caret);
  while (tail < longest && text[text.length - 1 - tail] === after[after.length - 1 - tail]) tail++;
  let same = 0;
  const most = Math.min(text.length, after.length) - tail;
  while (same < most && text[same] === after[same]) same++;
  const goneTo = text.length - tail;
  if (leadEnd <= same) return leadEnd;
  return leadEnd >= goneTo ? leadEnd + after.length - text.length : Math.min(same, after.length);
}

/** A colon between two words ends the lead, unless the student says otherwise: "Deep water: ..." */
const COLON = /:\s+(?=\S)/g;

/** Where the lead seems to end: after the first colon outside of a formula. Null where there is none. */
export function suggestedEnd(text: string): number | null {
  const formulas = formulaRanges(text);
  for (const { index } of text.matchAll(COLON))
    if (!formulas.some(({ from, to }) => from <= index && index < to)) return index + 1;
  return null;
}

/**
 * A place moved so that it cuts no formula and no character in two: to the end of what it lies in.
 * @param at in UTF-16 units
 */
export function wholeAt(text: string, at: number): number {
  const formula = formulaRanges(text).find(({ from, to }) => from < at && at < to);
  if (formula) return formula.to;
  for (const { segment, index } of new Intl.Segmenter().segment(text))
    if (index < at && at < index + segment.length) return index + segment.length;
  return at;
}

/** A line in two, as Enter does it: what stands after a place becomes a line of its own. */
export function splitAt(line: LineText, at: number): [LineText, LineText] {
  const { text, leadEnd } = line;
  const before = text.slice(0, at).trimEnd();
  const rest = text.slice(at);
  const after = rest.trimStart();
  const endAfter = leadEnd - at - (rest.length - after.length);
  return [
    { text: before, leadEnd: Math.min(leadEnd, before.length) },
    // Cut within the rest, the second has its own lead still to be said.
    { text: after, leadEnd: endAfter > 0 ? endAfter : (suggestedEnd(after) ?? after.length) },
  ];
}

/** Two lines as one, as Backspace at the start of the second does it. */
export function joinedText(first: LineText, second: LineText): LineText {
  if (first.text === '') return second;
  if (second.text === '') return first;
  const text = `${first.text} ${second.text}`;
  const hasRest = first.leadEnd < first.text.length;
  return { text, leadEnd: hasRest ? first.leadEnd : first.text.length + 1 + second.leadEnd };
}
