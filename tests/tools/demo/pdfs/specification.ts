import { Random } from '../../../bench/random.ts';
import { A4, type PdfPage, type Run, writePdf } from './write-pdf.ts';

/** One line of the outline that a specification is set from. */
export interface SpecEntry {
  depth: number;
  code: string;
  text: string;
}

/** How a specification is set. */
export interface SpecStyle {
  /** Whether lines are set in by their depth. */
  indented: boolean;
  /** Whether chapters and sections are set larger. */
  sized: boolean;
  /** How much further in the text of left-hand pages stands, in points, as in bound volumes. */
  binding: number;
  numbering: 'points' | 'mixed' | 'bullets' | 'none';
  /** Whether paragraphs that explain stand between the chapters. */
  prose: boolean;
}

export const PLAIN: SpecStyle = { indented: true, sized: true, binding: 0, numbering: 'points', prose: true };

const NOUNS = 'waves tides currents ice salinity density pressure sound light swell surf gyres basins'.split(
  ' ',
);
const ADJECTIVES = 'deep shallow long short surface internal coastal polar steady breaking standing'.split(
  ' ',
);
const COMMANDS = 'State Explain Derive Calculate Describe Compare Sketch Estimate Define'.split(' ');
const ROMAN = ['i', 'ii', 'iii', 'iv', 'v', 'vi', 'vii', 'viii'];

/** An outline of so many lines about an invented course: chapters, sections, and statements below them. */
export function makeOutline(
  count: number,
  numbering: SpecStyle['numbering'] = 'points',
  seed = 7,
): SpecEntry[] {
  const random = new Random(seed);
  const phrase = () => `${random.pick(ADJECTIVES)} ${random.pick(NOUNS)}`;
  const used = new Set<string>();
  const once = (make: () => string): string => {
    for (;;) {
      const text = make();
      if (!used.has(text)) return used.add(text) && text;
    }
  };
  const capital = (text: string) => text[0]!.toUpperCase() + text.slice(1);
  const title = () =>
    once(() => capital(`${phrase()} and ${phrase()}${random.below(3) ? '' : ` in ${phrase()}`}`));
  const statement = () =>
    once(() => {
      const tail = Array.from(
        { length: random.below(5) },
        () => `, with ${phrase()} beside ${phrase()}`,
      ).join('');
      return `${random.pick(COMMANDS)} how ${phrase()} depend on ${phrase()}${tail}.`;
    });
  const entries: SpecEntry[] = [];
  for (let chapter = 1; entries.length < count; chapter++) {
    entries.push({ depth: 0, code: String(chapter), text: title() });
    for (let section = 1; section <= 3 + random.below(3); section++) {
      entries.push({ depth: 1, code: `${chapter}.${section}`, text: title() });
      for (let point = 0; point < 2 + random.below(5); point++) {
        const letter = String.fromCharCode(97 + point);
        const code =
          { mixed: `(${letter})`, bullets: '•' }[numbering as string] ?? `${chapter}.${section}.${point + 1}`;
        const isMixed = numbering === 'mixed' && point === 1;
        entries.push({ depth: 2, code, text: isMixed ? title() : statement() });
        for (let part = 0; isMixed && part < 2 + random.below(3); part++)
          entries.push({ depth: 3, code: ROMAN[part]!, text: statement() });
      }
    }
  }
  const cut = entries.slice(0, count);
  return numbering === 'none' ? cut.map((entry) => ({ ...entry, code: '' })) : cut;
}

/** Widths of Helvetica's letters in thousandths of its size (Adobe's metrics of the core fonts, from memory). */
const WIDTHS: Readonly<Record<string, number>> = Object.fromEntries(
  (
    [
      [222, "ijl'"],
      [278, ' !,./:;I[]\\ft'],
      [333, '()-r`'],
      [500, 'cksvxyzJ'],
      [556, 'abdeghnopqu0123456789L?#$_'],
      [611, 'FTZ'],
      [667, 'ABEKPSVXY&'],
      [722, 'CDHNRUw'],
      [778, 'GOQ'],
      [833, 'Mm'],
      [889, '%'],
      [944, 'W'],
    ] as const
  ).flatMap(([width, letters]) => [...letters].map((letter) => [letter, width])),
);
const widthOf = (text: string, size: number): number =>
  ([...text].reduce((sum, letter) => sum + (WIDTHS[letter] ?? 556), 0) * size) / 1000;

/** A text broken into lines of a width, between words. */
function broken(text: string, size: number, width: number): string[] {
  const lines: string[] = [];
  let open = '';
  for (const word of text.split(' ')) {
    const longer = open ? `${open} ${word}` : word;
    if (open && widthOf(longer, size) > width) {
      lines.push(open);
      open = word;
    } else open = longer;
  }
  return [...lines, open];
}

const MARGIN = 62;
const TOP = 92;
const BOTTOM = 760;
const EXPLANATION =
  'This part builds on what came before it. Students meet the sea as a whole first and its waters one by one later. ' +
  'Teachers may take the topics in any order, and field work is encouraged throughout the year.';

/** Sets an outline as exam boards set their specifications: cover, contents, running heads, page numbers. */
export function writeSpecification(entries: readonly SpecEntry[], style: SpecStyle = PLAIN): Buffer {
  const book = new Book(style);
  book.cover();
  book.contents(entries);
  for (const entry of entries) book.entry(entry);
  return writePdf({ title: 'untitled', pages: book.finish() });
}

class Book {
  readonly #style: SpecStyle;
  readonly #pages: Run[][] = [];
  #y = TOP;

  constructor(style: SpecStyle) {
    this.#style = style;
  }

  cover(): void {
    this.#pages.push([
      { font: 'Sans', size: 30, x: 90, y: 260, text: 'Foundation Oceanography' },
      { font: 'Sans', size: 14, x: 90, y: 300, text: 'Specification for first teaching in the coming year' },
      { font: 'Sans', size: 10, x: 90, y: 700, text: 'Ormscaith College, third version' },
    ]);
  }

  contents(entries: readonly SpecEntry[]): void {
    this.#turn();
    this.#put('Contents', 16, 0);
    this.#y += 26;
    for (const { depth, code, text } of entries.filter((entry) => entry.depth < 2).slice(0, 44)) {
      const name = `${code} ${text}`.trim();
      this.#put(`${name} ${'.'.repeat(Math.max(4, 100 - name.length))} ${10 + depth}`, 9, 0);
      this.#y += 14;
    }
    this.#turn();
  }

  entry({ depth, code, text }: SpecEntry): void {
    const { indented, sized, prose } = this.#style;
    const size = sized ? ([18, 13][depth] ?? 10) : 10;
    const left = indented ? 16 * depth : 0;
    // Behind the number, as a tabulator sets it.
    const hang = code ? Math.max(24, widthOf(`${code} `, size) + 8) : 0;
    const leading = 1.25 * size;
    this.#y += depth === 0 ? 20 : depth === 1 ? 12 : 5;
    const lines = broken(text, size, A4.width - 2 * MARGIN - left - hang);
    if (this.#y + lines.length * leading > BOTTOM) this.#turn();
    lines.forEach((line, i) => {
      if (i === 0 && code) this.#put(code, size, left);
      this.#put(line, size, left + hang);
      this.#y += leading;
    });
    if (prose && depth === 0) this.#explain();
  }

  finish(): PdfPage[] {
    return this.#pages.map((runs, i) => ({ runs: i === 0 ? runs : [...runs, ...this.#edges(i)] }));
  }

  #explain(): void {
    this.#y += 6;
    for (const line of broken(EXPLANATION, 10, A4.width - 2 * MARGIN)) {
      this.#put(line, 10, 0);
      this.#y += 12.5;
    }
  }

  #edges(i: number): Run[] {
    const head = i % 2 ? 'Foundation Oceanography: specification' : 'Ormscaith College';
    const foot = `Page ${i + 1} of ${this.#pages.length}`;
    return [
      { font: 'Sans', size: 8, x: MARGIN + this.#shift(i), y: 48, text: head },
      { font: 'Sans', size: 8, x: 280, y: 806, text: foot },
    ];
  }

  #shift = (i: number): number => (i % 2 ? this.#style.binding : 0);

  #turn(): void {
    this.#pages.push([]);
    this.#y = TOP;
  }

  #put(text: string, size: number, left: number): void {
    const i = this.#pages.length - 1;
    this.#pages[i]!.push({ font: 'Sans', size, x: MARGIN + this.#shift(i) + left, y: this.#y, text });
  }
}
