import type { TextQuoteSelector } from '#lib/model/selector.ts';

/** A text directive of the WICG's URL text fragments: `text=[prefix-,]start[,end][,-suffix]`. */
export interface TextDirective {
  prefix?: string;
  start: string;
  end?: string;
  suffix?: string;
}

const DELIMITER = ':~:';
/** A passage of more words is told by its first and last ones: what is between them may be formulas and blocks. */
const LONGEST_WHOLE = 8;
const WORDS_AT_ENDS = 5;
/** A passage of fewer words may stand anywhere: words before and behind it go with it. */
const FEWEST_ALONE = 4;
const WORDS_OF_CONTEXT = 3;
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

function directivesFor({ exact, prefix = '', suffix = '' }: TextQuoteSelector): TextDirective[] {
  const head = wordsIn(exact.slice(0, REACH));
  const words = exact.length <= REACH ? head : [...head, ...wordsIn(exact.slice(-REACH))];
  if (words.length === 0) return [];
  if (words.length < FEWEST_ALONE) return shortDirectives(exact, prefix, suffix);
  const from = isCut(prefix, exact) ? 1 : 0;
  const to = isCut(exact, suffix) ? words.length - 1 : words.length;
  if (exact.length <= REACH && to - from <= LONGEST_WHOLE) return [{ start: spanned(words, from, to) }];
  const start = spanned(words, from, from + WORDS_AT_ENDS);
  // Should the end have changed, the start alone still leads there.
  return [{ start, end: spanned(words, to - WORDS_AT_ENDS, to) }, { start }];
}

/** A short passage with its neighbours and, should they have changed, without. */
function shortDirectives(exact: string, prefix: string, suffix: string): TextDirective[] {
  const before = wordsIn(prefix.slice(-REACH));
  const after = wordsIn(suffix.slice(0, REACH));
  const words = wordsIn(exact);
  const start = [
    isCut(prefix, exact) ? before.pop()!.text : '',
    spanned(words, 0, words.length),
    isCut(exact, suffix) ? after.shift()!.text : '',
  ].join('');
  const directive = {
    ...(before.length > 0 ? { prefix: spanned(before, before.length - WORDS_OF_CONTEXT, before.length) } : {}),
    start,
    ...(after.length > 0 ? { suffix: spanned(after, 0, WORDS_OF_CONTEXT) } : {}),
  };
  return before.length + after.length > 0 ? [directive, { start }] : [directive];
}

interface Word {
  text: string;
  /** What stands between it and the next word. */
  gap: string;
}

/** The words of a text as the browser tells them, with white space as the page shows it. */
function wordsIn(text: string): Word[] {
  const words: Word[] = [];
  const shown = text.toWellFormed().replace(/\s+/g, ' ');
  for (const { segment, isWordLike } of new Intl.Segmenter(undefined, { granularity: 'word' }).segment(shown)) {
    if (isWordLike) words.push({ text: segment, gap: '' });
    else if (words.length > 0) words.at(-1)!.gap += segment;
  }
  return words;
}

function spanned(words: readonly Word[], from: number, to: number): string {
  const span = words.slice(Math.max(0, from), to);
  return span.map(({ text, gap }, index) => (index < span.length - 1 ? text + gap : text)).join('');
}

/** Whether one word may go on from the first text into the second, so that its halves are no words. */
const isCut = (first: string, second: string): boolean =>
  /[\p{L}\p{N}\p{M}]$/u.test(first) && /^[\p{L}\p{N}\p{M}]/u.test(second);
