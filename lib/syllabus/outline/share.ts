import type { ShareUnit } from '#lib/model/topic.ts';
import { PLAIN_COMMAND_WORDS } from '../command-words.ts';

const NUMBER = String.raw`(\d{1,4}(?:[.,]\d{1,2})?)(?:\s*(?:-|–|to)\s*(\d{1,4}(?:[.,]\d{1,2})?))?`;
const UNIT = String.raw`(%|per ?cent|marks?|hours?|hrs?|h|lessons?|lectures?|periods?|weeks?|credits?)`;
const WHOLE = String.raw`(?:\s+(?:of\s+(?:the\s+)?)?(?:exam|examination|marks|total|paper|course))?`;

const BRACKETED = new RegExp(
  String.raw`\s*[([]\s*(?:(?:about|approx\.?|ca?\.|~)\s*)?${NUMBER}\s*${UNIT}${WHOLE}\s*[)\]]$`,
  'i',
);
const OPEN = new RegExp(String.raw`(?:\s*[:,;|–—-]+\s*|\s*\.{2,}\s*|\s+)${NUMBER}\s*${UNIT}$`, 'i');

/** Words after which a number is part of the sentence: "a half-life of 8 hours". */
const SPOKEN =
  /\b(?:of|by|than|at|is|are|to|about|for|in|within|over|under|least|most|and|or|every|after|from)$|[=<>≈≤≥~]$/i;
const MOST_WORDS = 10;

export interface TextAndShare {
  text: string;
  /** A weight in whatever unit the syllabus gives; a range counts by its middle. Null where none is given. */
  share: number | null;
  unit: ShareUnit;
}

/** Parts a weight such as "(20 %)", "[12 marks]" or "8 hours" from the end of a row's text. */
export function readShare(text: string): TextAndShare {
  const end = text.slice(-80);
  const found = BRACKETED.exec(end) ?? OPEN.exec(end);
  if (!found) return { text, share: null, unit: 'parts' };
  const before = text.slice(0, text.length - end.length + found.index).trimEnd();
  const share = middleOf(found[1], found[2]);
  const isBracketed = /[)\]]$/.test(found[0]);
  if (before === '' || (!isBracketed && isSaid(before))) return { text, share: null, unit: 'parts' };
  return { text: before, share, unit: unitOf(found[3] ?? '') };
}

/** What a word behind a number counts. Lessons and weeks say only how topics compare. */
export function unitOf(word: string): ShareUnit {
  if (/%|per ?cent/i.test(word)) return 'percent';
  if (/marks?\b/i.test(word)) return 'marks';
  return /^h(?:ours?|rs?)?\b/i.test(word.trim()) ? 'hours' : 'parts';
}

function middleOf(low: string | undefined, high: string | undefined): number {
  const number = (text: string): number => Number(text.replace(',', '.'));
  const from = number(low ?? '0');
  return high === undefined ? from : (from + number(high)) / 2;
}

/** Whether an unbracketed number belongs to the sentence before it rather than to the row. */
function isSaid(before: string): boolean {
  const words = before.split(' ');
  return (
    SPOKEN.test(before) ||
    words.length > MOST_WORDS ||
    PLAIN_COMMAND_WORDS.has((words[0] ?? '').toLowerCase())
  );
}
