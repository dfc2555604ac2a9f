// Bundled into a page of a real browser, where the experiment is quick and its DOM the real one.
import * as textPosition from 'dom-anchor-text-position';
import * as textQuote from 'dom-anchor-text-quote';
import { type RangeSelectors, describeRange } from '#lib/capture/find/describe-range.ts';
import { findPassage } from '#lib/capture/find/find-passage.ts';
import { findPassages } from '#lib/capture/find/find-passages.ts';
import { type PageText, readPageText } from '#lib/capture/find/page-text.ts';
import { Random } from '#tests/bench/random.ts';
import { changeWords } from './edits.ts';
import { type Finder, type Level, type Tally, proseOf, tryPage } from './experiment.ts';
import { choosePassages, paragraphsOf, rangeOf } from './passages.ts';

const pages = new WeakMap<Node, PageText>();

function pageOf(root: Node): PageText {
  const page = pages.get(root) ?? readPageText(root);
  pages.set(root, page);
  return page;
}

const ours: Finder = {
  describe: describeRange,
  find: (root, selectors: RangeSelectors) => findPassage(pageOf(root), selectors)?.range ?? null,
};

interface Anchor {
  quote: textQuote.Quote;
  hint: number;
}

/** The general-purpose library as its manual has it used: the quote, with the old position as a hint. */
const library: Finder = {
  describe: (range, root): Anchor => ({
    quote: textQuote.fromRange(root, range),
    hint: textPosition.fromRange(root, range).start,
  }),
  find: (root, { quote, hint }: Anchor) => textQuote.toRange(root, quote, { hint }),
};

const parse = (html: string): Document => new DOMParser().parseFromString(html, 'text/html');

/** One level on every page, for both finders. */
function experiment(htmls: readonly string[], level: Level): Record<'ours' | 'library', Tally> {
  const prose = htmls.map((html) => proseOf(parse(html)));
  const sums = { ours: noneYet(), library: noneYet() };
  for (const [seed, html] of htmls.entries()) {
    const strangers = prose.filter((_, other) => other !== seed).flat();
    const tallies = tryPage({ html, level, seed, strangers, parse }, { ours, library });
    for (const name of ['ours', 'library'] as const) add(sums[name], tallies[name]);
  }
  return sums;
}

const noneYet = (): Tally => ({ right: 0, part: 0, wrong: 0, none: 0 });

function add(sum: Tally, tally: Tally): void {
  for (const key of Object.keys(sum) as (keyof Tally)[]) sum[key] += tally[key];
}

interface Speed {
  found: number;
  /** What the search took of the main thread in all, and its longest piece, in ms. */
  busy: number;
  longest: number;
}

/**
 * Puts pages one after another into this one, describes passages in it, changes one word in twenty if asked to, and
 * finds the passages again as a content script would.
 */
async function findMany(htmls: readonly string[], count: number, isChanged: boolean): Promise<Speed> {
  document.body.replaceChildren(...htmls.flatMap((html) => [...parse(html).body.childNodes]));
  const paragraphs = paragraphsOf(document);
  const passages = choosePassages(document, new Random(1));
  const step = passages.length / count;
  const clips = Array.from({ length: count }, (_, index) => {
    const passage = passages[Math.floor(index * step)]!;
    return { selectors: describeRange(rangeOf(paragraphs[passage.paragraph]!, passage), document.body) };
  });
  if (isChanged) changeWords({ doc: document, random: new Random(2), strangers: [] });
  return timed(clips);
}

async function timed(clips: readonly { selectors: RangeSelectors }[]): Promise<Speed> {
  const result: Speed = { found: 0, busy: 0, longest: 0 };
  let resumed = performance.now();
  const stop = () => {
    const piece = performance.now() - resumed;
    result.busy += piece;
    result.longest = Math.max(result.longest, piece);
  };
  const pause = async () => {
    stop();
    await new Promise((rested) => setTimeout(rested, 0));
    resumed = performance.now();
  };
  const now = () => performance.now();
  for await (const { found } of findPassages(document.body, clips, { now, pause })) if (found) result.found++;
  stop();
  return result;
}

export const refind = { experiment, findMany };
Object.assign(globalThis, { refind });
