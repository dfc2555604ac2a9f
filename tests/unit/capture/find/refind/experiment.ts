import { unitsOfRange } from '#lib/capture/find/text-points.ts';
import { Random } from '#tests/bench/random.ts';
import {
  type Edit,
  changeCharacters,
  changeMarkup,
  changeParagraphs,
  changeWords,
  removePassages,
  typeset,
} from './edits.ts';
import { choosePassages, mark, paragraphsOf, rangeOf, takeMarks } from './passages.ts';

/** Something that can describe a range and find it again by the description. */
export interface Finder {
  describe(range: Range, root: Element): unknown;
  find(root: Element, description: never): Range | null;
}

/** What happens to a page before passages are sought in it: from when it was clipped, and until it is opened again. */
const LEVELS = {
  unchanged: { after: [] },
  words: { after: [changeWords] },
  paragraphs: { after: [changeParagraphs] },
  markup: { after: [changeMarkup] },
  characters: { after: [changeCharacters] },
  all: { after: [changeWords, changeParagraphs, changeMarkup, changeCharacters] },
  'formulas typeset since': { after: [({ doc }) => typeset(doc)] },
  'formulas typeset then': { before: typeset, after: [] },
  gone: { after: [changeParagraphs, ({ doc }) => removePassages(doc)] },
} satisfies Record<string, { before?: (doc: Document) => void; after: ((edit: Edit) => void)[] }>;

export type Level = keyof typeof LEVELS;
export const levels = Object.keys(LEVELS) as Level[];

/** Passages by how they were found: in place for nine tenths or more, for a part, elsewhere, or not at all. */
export interface Tally {
  right: number;
  part: number;
  wrong: number;
  none: number;
}

const ENOUGH = 0.9;

interface Trial {
  html: string;
  level: Level;
  seed: number;
  strangers: readonly string[];
  parse: (html: string) => Document;
}

/** Describes passages all over a page, edits a copy of it, and lets each finder look for them there. */
export function tryPage<Name extends string>(
  { html, level, seed, strangers, parse }: Trial,
  finders: Record<Name, Finder>,
): Record<Name, Tally> {
  const steps: { before?: (doc: Document) => void; after: ((edit: Edit) => void)[] } = LEVELS[level];
  const old = parse(html);
  const passages = choosePassages(old, new Random(seed + 77_000));
  const doc = parse(html);
  mark(doc, passages);
  const oldParagraphs = paragraphsOf(old);
  steps.before?.(old);
  const random = new Random(seed + 88_000);
  for (const edit of steps.after) edit({ doc, random, strangers });
  const truth = takeMarks(doc.body);
  const solid = solidBefore(doc.body.textContent ?? '');
  const tallies = {} as Record<Name, Tally>;
  for (const [name, finder] of Object.entries<Finder>(finders)) {
    const tally: Tally = { right: 0, part: 0, wrong: 0, none: 0 };
    for (const [index, passage] of passages.entries()) {
      const description = finder.describe(rangeOf(oldParagraphs[passage.paragraph]!, passage), old.body);
      const found = finder.find(doc.body, description as never);
      tally[verdict(found && unitsOfRange(found, doc.body), truth[index], solid)]++;
    }
    tallies[name as Name] = tally;
  }
  return tallies;
}

/** How many characters other than white space stand before each place. */
function solidBefore(text: string): Uint32Array {
  const before = new Uint32Array(text.length + 1);
  for (let unit = 0; unit < text.length; unit++)
    before[unit + 1] = before[unit]! + (/\s/.test(text[unit]!) ? 0 : 1);
  return before;
}

type Span = [start: number, end: number];

function verdict(found: Span | null, truth: Span | undefined, solid: Uint32Array): keyof Tally {
  if (!found) return truth ? 'none' : 'right';
  if (!truth) return 'wrong';
  const [from, to, start, end] = [...found, ...truth].map((unit) => solid[unit]!) as [
    number,
    number,
    number,
    number,
  ];
  const shared = Math.min(to, end) - Math.max(from, start);
  if (shared <= 0) return 'wrong';
  return shared / (Math.max(to, end) - Math.min(from, start)) >= ENOUGH ? 'right' : 'part';
}

/** The prose of a page, to be put into others. */
export function proseOf(doc: Document): string[] {
  return paragraphsOf(doc).map((paragraph) => (paragraph.textContent ?? '').trim());
}
