import type { TextQuoteSelector } from '#lib/model/selector.ts';
import { FORMULA } from '../find/formula-signs.ts';

/** A text directive of the WICG's URL text fragments: `text=[prefix-,]start[,end][,-suffix]`. */
export interface TextDirective {
  prefix?: string;
  start: string;
  end?: string;
  suffix?: string;
}

const DELIMITER = ':~:';
/** A passage of more words is told by its first and last ones: what is between them may reach over several blocks. */
const LONGEST_WHOLE = 8;
const WORDS_AT_ENDS = 4;
/** Of a passage of fewer words, none is left out for having been cut. */
const FEWEST_ALONE = 4;
/** Fewer words than so before a formula or behind it name no place. */
const FEWEST_AT_END = 2;
const WORDS_OF_CONTEXT = 5;
/** Words are sought in so many units at each end of a passage. */
const REACH = 400;

/**
 * The address of a page with a text fragment behind it, which lets the browser scroll to the quote. A browser matches
 * whole words only, so the directive is cut at word boundaries. The address itself when the quote has no word.
 */
export function textFragment(url: string, quote: TextQuoteSelector): string {
  const directives = directivesFor(quote);
  if (directives.length === 0) return url;
  const [page] = url.split(DELIMITER);
  const hash = page!.includes('#') ? '' : '#';
  return `${page}${hash}${DELIMITER}${directives.map(serialise).join('&')}`;
}

/** The text directives of an address, the first that a browser would look for first. */
export function parseTextFragment(url: string): TextDirective[] {
  const hash = url.indexOf('#');
  const at = hash < 0 ? -1 : url.indexOf(DELIMITER, hash);
  if (at < 0) return [];
  return url
    .slice(at + DELIMITER.length)
    .split('&')
    .flatMap((part) => parseDirective(part) ?? []);
}

function parseDirective(part: string): TextDirective | null {
  if (!part.startsWith('text=')) return null;
  const tokens = part.slice('text='.length).split(',');
  const prefix = tokens[0]!.endsWith('-') ? tokens.shift()!.slice(0, -1) : null;
  const suffix = tokens.at(-1)?.startsWith('-') ? tokens.pop()!.slice(1) : null;
  const [start, end, ...more] = tokens;
  const given = [prefix, start, end, suffix].filter((token) => token !== null && token !== undefined);
  if (!start || more.length > 0 || given.some((token) => token === '' || token.includes('-'))) return null;
  return {
    ...(prefix ? { prefix: decode(prefix) } : {}),
    start: decode(start),
    ...(end ? { end: decode(end) } : {}),
    ...(suffix ? { suffix: decode(suffix) } : {}),
  };
}

/** As a URL's parser decodes: a percent sign that begins no code stays. */
function decode(text: string): string {
  const bytes = text.replace(/%(?![0-9a-f]{2})/gi, '%25');
  try {
    return decodeURIComponent(bytes);
  } catch {
    return text;
  }
}

function serialise({ prefix, start, end, suffix }: TextDirective): string {
  const parts = [
    prefix === undefined ? '' : `${encode(prefix)}-,`,
    encode(start),
    end === undefined ? '' : `,${encode(end)}`,
    suffix === undefined ? '' : `,-${encode(suffix)}`,
  ];
  return `text=${parts.join('')}`;
}

/** A dash would belong to the syntax; comma and ampersand are escaped in any case. */
const encode = (text: string): string => encodeURIComponent(text).replaceAll('-', '%2D');

/**
 * The passage with its context first; then, should that have changed, the passage alone; then, should its end have, its
 * start. A browser goes to the first that it finds.
 */
function directivesFor(quote: TextQuoteSelector): TextDirective[] {
  const { exact, prefix = '', suffix = '' } = quote;
  const [cutBefore, cutBehind] = [isCut(prefix, exact), isCut(exact, suffix)];
  const { length } = shownOf(exact.slice(0, REACH)).words;
  if (length === 0) return [];
  if (length < FEWEST_ALONE && (cutBefore || cutBehind)) return directivesFor(ofWholeWords(quote));
  const [head, tail] = endsOf(exact, length, cutBefore, cutBehind);
  const before = cutBefore ? '' : lastWords(prefix);
  const behind = cutBehind || !tail ? '' : firstWords(suffix);
  const directives = [directiveOf(head, tail, '', '')];
  if (before || behind) directives.unshift(directiveOf(head, tail, before, behind));
  if (tail && tail !== head) directives.push({ start: head.words });
  return directives;
}

/** A directive with so much context, and then with the signs between that and the words. */
function directiveOf(head: Piece, tail: Piece | null, prefix: string, suffix: string): TextDirective {
  const start = (prefix && head.lead) + head.words;
  const rest = suffix && tail ? tail.rest : '';
  return {
    ...(prefix ? { prefix } : {}),
    ...(tail && tail !== head ? { start, end: tail.words + rest } : { start: start + rest }),
    ...(suffix ? { suffix } : {}),
  };
}

/** Words of a passage, with the signs that part them from its start and its end. */
interface Piece {
  lead: string;
  words: string;
  rest: string;
  /** Where its last word ends. */
  to: number;
}

function pieceOf({ text }: Shown, words: readonly Word[]): Piece {
  const [from, to] = [words[0]!.from, words.at(-1)!.to];
  return { lead: text.slice(0, from), words: text.slice(from, to), rest: text.slice(to), to };
}

/** The ends by which the passage is told: one and the same where it is short and has no formula. */
function endsOf(
  exact: string,
  words: number,
  cutBefore: boolean,
  cutBehind: boolean,
): [head: Piece, tail: Piece | null] {
  if (exact.length <= REACH && words <= LONGEST_WHOLE && !FORMULA.test(exact)) {
    const whole = wholeOf(exact, cutBefore, cutBehind);
    return [whole, whole];
  }
  const head = headOf(exact, cutBefore);
  return [head, tailOf(exact, cutBehind, head)];
}

function wholeOf(exact: string, cutBefore: boolean, cutBehind: boolean): Piece {
  const shown = shownOf(exact);
  return pieceOf(shown, shown.words.slice(cutBefore ? 1 : 0, cutBehind ? -1 : undefined));
}

/** The first words, up to a formula if there are any: by now it may be set otherwise. */
function headOf(exact: string, isCut: boolean): Piece {
  const shown = shownOf(exact.slice(0, REACH));
  const words = shown.words.slice(isCut && shown.words.length > 1 ? 1 : 0, WORDS_AT_ENDS);
  const formula = shown.text.search(FORMULA);
  const plain = words.filter(({ to }) => formula < 0 || to <= formula);
  return pieceOf(shown, plain.length < FEWEST_AT_END ? words : plain);
}

/** The last words, behind any formula; null where they are too few, or part of the first ones. */
function tailOf(exact: string, isCut: boolean, head: Piece): Piece | null {
  const shown = shownOf(exact.slice(-REACH));
  const words = shown.words.slice(0, isCut ? -1 : undefined).slice(-WORDS_AT_ENDS);
  const plain = words.filter(({ from }) => !FORMULA.test(shown.text.slice(from)));
  const isApart = exact.length > REACH || (plain[0]?.from ?? 0) >= head.to;
  return plain.length >= FEWEST_AT_END && isApart ? pieceOf(shown, plain) : null;
}

/** The quote with the rest of the words in which it begins and ends. */
function ofWholeWords({ exact, prefix = '', suffix = '' }: TextQuoteSelector): TextQuoteSelector {
  const [lead = ''] = isCut(prefix, exact) ? (/[\p{L}\p{N}\p{M}]+$/u.exec(prefix) ?? []) : [];
  const [rest = ''] = isCut(exact, suffix) ? (/^[\p{L}\p{N}\p{M}]+/u.exec(suffix) ?? []) : [];
  return {
    type: 'TextQuoteSelector',
    exact: lead + exact + rest,
    prefix: prefix.slice(0, prefix.length - lead.length),
    suffix: suffix.slice(rest.length),
  };
}

/** Text as the page shows it, without white space at its ends, and where its words stand. */
interface Shown {
  text: string;
  words: Word[];
}

interface Word {
  from: number;
  to: number;
}

function shownOf(text: string): Shown {
  const shown = text.toWellFormed().replace(/\s+/g, ' ').trim();
  const segments = new Intl.Segmenter(undefined, { granularity: 'word' }).segment(shown);
  const words = [...segments].filter(({ isWordLike }) => isWordLike);
  return {
    text: shown,
    words: words.map(({ index, segment }) => ({ from: index, to: index + segment.length })),
  };
}

/**
 * The last words of a text's last line, with what stands behind them: nothing but white space may part them from the
 * passage. Not of an earlier line, since a block may have ended with that, and a directive's context is one block's.
 */
function lastWords(text: string): string {
  const line = shownOf(text.trimEnd().split('\n').at(-1)!);
  const first = line.words.at(-WORDS_OF_CONTEXT) ?? line.words[0];
  return first ? line.text.slice(first.from) : '';
}

/** The first words of a text's first line, with what stands before them. */
function firstWords(text: string): string {
  const line = shownOf(text.trimStart().split('\n')[0]!);
  const last = line.words[WORDS_OF_CONTEXT - 1] ?? line.words.at(-1);
  return last ? line.text.slice(0, last.to) : '';
}

/** Whether one word may go on from the first text into the second, so that its halves are no words. */
const isCut = (first: string, second: string): boolean =>
  /[\p{L}\p{N}\p{M}]$/u.test(first) && /^[\p{L}\p{N}\p{M}]/u.test(second);
