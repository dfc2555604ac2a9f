import { render } from 'preact';
import { type Cut, bitsBetween } from '#lib/notes/print/bits.ts';
import type { PictureBlock, PrintBlock } from '#lib/notes/print/blocks.ts';
import type { Frame } from '#lib/notes/print/paper.ts';
import { pictureSize } from '#lib/notes/print/picture-size.ts';
import { type LaidBit, type PrintLook, type Shrunk, type TextBlock, cellsOf } from './cells.ts';
import { type Formulas, loadedFormulas } from './formulas.ts';
import { lineStarts } from './line-starts.ts';
import { PartView } from './part-view.tsx';

/** A block as it was laid out. */
export interface Laid {
  /** Heights in whole CSS pixels: of the block, or of each line where it is a long one. */
  parts: readonly number[];
  /** What stands in each part, cell by cell; empty for a picture. */
  cells: LaidBit[][][];
  /** How large a picture stands. */
  size?: { width: number; height: number };
}

/** A text of so many lines may be parted between columns; a shorter one goes to the next as a whole. */
const LONG = 8;

/** Height of a line of words in CSS pixels, as print.css sets it. */
const LINE_HEIGHT = 16;

/**
 * On paper letters are set without regard to the screen's pixels, which moves them by fractions of one. What is measured
 * is laid out in a column that is narrower by so much: what fits there, fits on paper.
 */
const SLACK = 0.5;

/** What a formula may take of the height of a column. */
const TALLEST_FORMULA = 0.8;

/** How many blocks as they once were are remembered beyond those that stand. */
const MOST_KEPT = 5000;

/** A block's indentation, in CSS pixels, as print.css sets it. */
export const DEPTH_WIDTH = 12;

/** The part of a cover strip's width that stays in sight, as print.css sets it. */
export const LEADS_WIDTH = 0.4;

/** Lays blocks out, out of sight, exactly as they are printed, and reads how tall they are. What it has measured it knows. */
export class Measurer {
  readonly frame: Frame;
  readonly look: PrintLook;
  #host: HTMLElement;
  #formulas: Formulas | null = loadedFormulas();
  #known = new Map<string, Laid>();
  /** Where the lines of long blocks began, cell by cell, by the blocks' ids. */
  #starts = new Map<string, Cut[][]>();

  /** @param document where to lay out; print.css must be in it */
  constructor(document: Document, frame: Frame, look: PrintLook) {
    this.frame = frame;
    this.look = look;
    this.#host = document.createElement('div');
    this.#host.className = 'print-column print-measure';
    this.#host.setAttribute('aria-hidden', 'true');
    this.#host.inert = true;
    this.#host.style.width = `${frame.columnWidth - SLACK}px`;
    document.body.append(this.#host);
  }

  /** Takes the reader of TeX: what has formulas is measured anew, now that they can be set. */
  useFormulas(formulas: Formulas): void {
    this.#formulas = formulas;
    this.#known.clear();
  }

  get formulas(): Formulas | null {
    return this.#formulas;
  }

  /** How tall blocks are. Those that were not known yet are laid out together. */
  measure(blocks: readonly PrintBlock[]): Laid[] {
    const unknown = new Map<string, TextBlock>();
    if (this.#known.size > blocks.length + MOST_KEPT) this.#known.clear();
    for (const block of blocks)
      if (block.kind !== 'picture' && !this.#known.has(keyOf(block))) unknown.set(keyOf(block), block);
    if (unknown.size > 0) {
      const laid = this.#layOut([...unknown.values()]);
      [...unknown.keys()].forEach((key, i) => this.#known.set(key, laid[i]!));
    }
    return blocks.map((block) =>
      block.kind === 'picture' ? this.#picture(block) : this.#known.get(keyOf(block))!,
    );
  }

  /** Takes the hidden column out of the document. */
  close(): void {
    render(null, this.#host);
    this.#host.remove();
  }

  #picture(block: PictureBlock): Laid {
    const { frame, look } = this;
    const whole = frame.columnWidth - block.depth * DEPTH_WIDTH;
    const place = look === 'strip' ? frame.columnWidth * (1 - LEADS_WIDTH) - DEPTH_WIDTH : whole;
    const size = pictureSize(block, place, frame);
    return { parts: [Math.ceil(size.height)], cells: [], size };
  }

  #layOut(blocks: TextBlock[]): Laid[] {
    const shots = blocks.map((block) => ({ block, cells: this.#withFormulas(cellsOf(block, this.look)) }));
    const whole = () =>
      this.#draw(shots.map(({ block, cells }) => ({ block, cells, isFirst: true, isLast: true })));
    let heights = whole();
    if (this.#fitFormulas(shots)) heights = whole();
    const laid = shots.map(({ cells }, i): Laid => ({ parts: [heights[i]!], cells: [cells] }));
    const drawn = this.#drawn();
    const long = shots.flatMap(({ block, cells }, i) => {
      if (block.kind === 'topic' || heights[i]! < LONG * LINE_HEIGHT) return [];
      const before = this.#starts.get(block.id);
      const starts = [...drawn[i]!.children].map((cell, at) => lineStarts(cell as HTMLElement, before?.[at]));
      this.#starts.set(block.id, starts);
      const lines = linesOf(cells, starts);
      if (lines.length < LONG) return [];
      if (block.kind !== 'line' || !areEven(lines, heights[i]!)) return [{ i, block, lines }];
      laid[i] = { parts: lines.map(() => LINE_HEIGHT), cells: lines };
      return [];
    });
    this.#layOutLines(long, laid);
    render(null, this.#host);
    return laid;
  }

  /** Measures the lines of long blocks, each by itself. */
  #layOutLines(long: { i: number; block: TextBlock; lines: LaidBit[][][] }[], laid: Laid[]): void {
    if (long.length === 0) return;
    const parts = long.flatMap(({ block, lines }) =>
      lines.map((cells, at) => ({ block, cells, isFirst: at === 0, isLast: at === lines.length - 1 })),
    );
    const heights = this.#draw(parts);
    let from = 0;
    for (const { i, lines } of long) {
      laid[i] = { parts: heights.slice(from, from + lines.length), cells: lines };
      from += lines.length;
    }
  }

  /** Cells in which a formula that does not parse stands as the words that it is. */
  #withFormulas(cells: LaidBit[][]): LaidBit[][] {
    const formulas = this.#formulas;
    return cells.map((bits) =>
      bits.map((bit) => {
        if (bit.kind === 'words' || formulas?.nodesOf(bit.tex, bit.display)) return bit;
        return { kind: 'words', style: bit.style, text: bit.tex };
      }),
    );
  }

  /** Draws parts one under another and gives their heights. */
  #draw(parts: Omit<Parameters<typeof PartView>[0], 'look' | 'formulas'>[]): number[] {
    const { look } = this;
    render(null, this.#host);
    render(
      parts.map((part, i) => <PartView key={i} {...part} look={look} formulas={this.#formulas} />),
      this.#host,
    );
    // A page that is zoomed gives heights that are off by fractions of a pixel.
    return this.#drawn().map((one) => Math.ceil(one.getBoundingClientRect().height - 0.25));
  }

  #drawn(): HTMLElement[] {
    return [...this.#host.children] as HTMLElement[];
  }

  /** Makes formulas smaller that are too large for their place; says whether there was one. */
  #fitFormulas(shots: { cells: LaidBit[][] }[]): boolean {
    let found = false;
    const drawn = this.#drawn();
    const tallest = TALLEST_FORMULA * this.frame.columnHeight;
    for (const [i, { cells }] of shots.entries()) {
      if (!cells.some((bits) => bits.some(({ kind }) => kind === 'maths'))) continue;
      for (const [at, bits] of cells.entries()) {
        const cell = drawn[i]!.children[at] as HTMLElement;
        const room = roomIn(cell);
        for (const [place, bit] of bits.entries()) {
          if (bit.kind !== 'maths') continue;
          const shrunk = shrinking(cell.children[place]!, { width: room, height: tallest });
          if (!shrunk) continue;
          found = true;
          bits[place] = { ...bit, shrunk };
        }
      }
    }
    return found;
  }
}

/** How a formula is made to fit; null where it does. */
function shrinking(span: Element, room: { width: number; height: number }): Shrunk | null {
  const formula = span.firstElementChild ?? span;
  const box = formula.getBoundingClientRect();
  // The box of a formula that does not fit its line may be narrower than what is in it.
  const width = Math.max(box.width, formula.scrollWidth);
  const { height } = box;
  const scale = Math.min(room.width / width, room.height / height);
  return scale < 1 ? { scale, width: width * scale, height: height * scale } : null;
}

/** The width that the words of a cell have. */
function roomIn(cell: HTMLElement): number {
  const { paddingLeft, paddingRight } = getComputedStyle(cell);
  return cell.clientWidth - parseFloat(paddingLeft) - parseFloat(paddingRight);
}

/** Whether lines hold nothing but words and make up the height that was measured: then each is as tall as any. */
const areEven = (lines: LaidBit[][][], height: number): boolean =>
  height === lines.length * LINE_HEIGHT && lines.flat(2).every(({ kind }) => kind === 'words');

/** What stands in each line, cell by cell; a cell that has ended before another is empty from there. */
function linesOf(cells: LaidBit[][], starts: Cut[][]): LaidBit[][][] {
  const count = Math.max(...starts.map((of) => of.length));
  return Array.from({ length: count }, (_, line) =>
    cells.map((bits, cell) => {
      const from = starts[cell]![line];
      return from ? bitsBetween(bits, from, starts[cell]![line + 1]) : [];
    }),
  );
}

/** What a block's height follows from. */
function keyOf(block: TextBlock): string {
  switch (block.kind) {
    case 'topic':
      return JSON.stringify([block.level, block.code, block.title]);
    case 'line':
      return JSON.stringify([block.depth, block.lead, block.rest]);
    case 'card':
      return JSON.stringify([block.number, block.topic, block.marks, block.prompt, block.answer]);
  }
}
