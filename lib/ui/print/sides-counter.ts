import { hasTex } from '#lib/notes/split-tex.ts';
import { type PrintBlock, gapAbove, keepsNext } from '#lib/notes/print/blocks.ts';
import { type MeasuredBlock, type Side, paginate, sidesByTopic } from '#lib/notes/print/paginate.ts';
import { type Frame, frameOf } from '#lib/notes/print/paper.ts';
import type { Course } from '#lib/model/course.ts';
import type { PrintLook } from './cells.ts';
import { type Formulas, loadFormulas } from './formulas.ts';
import { type Laid, Measurer } from './measurer.tsx';

/** What notes are printed on and how; the notes themselves where no look is named. */
export type PrintOptions = Pick<Course, 'paper' | 'columns'> & { look?: PrintLook };

/** A block with how it lies and how tall it is. */
export type LaidBlock = MeasuredBlock & Laid & { block: PrintBlock; topicId: string };

/**
 * Counts the sides that blocks print to, and lays them out for printing: the number while typing and the printed one are
 * the same by being the same layout. What has been measured is not measured again; a change costs one small layout.
 */
export class SidesCounter {
  #measurer: Measurer;
  #blocks: PrintBlock[] = [];
  #laid: LaidBlock[] = [];
  #places = new Map<string, number>();
  #sides: Side[] | null = null;
  #changed: () => void;
  #loading: Promise<void> | null = null;
  #isReady = true;
  #isClosed = false;

  /**
   * @param document a page with print.css in it
   * @param changed called when the count may have changed of itself: the reader of TeX has been loaded
   */
  constructor(document: Document, options: PrintOptions, changed: () => void = () => undefined) {
    this.#measurer = new Measurer(document, frameOf(options), options.look ?? 'notes');
    this.#changed = changed;
  }

  /** The blocks to count, in the order in which they are printed. */
  set(blocks: readonly PrintBlock[]): void {
    this.#blocks = [...blocks];
    this.#places = new Map(blocks.map(({ id }, place) => [id, place]));
    if (!this.formulas && blocks.some(hasFormula)) void this.#load();
    this.#layOut();
  }

  /** One of the blocks has other words. Throws where there is none with this id. */
  change(id: string, block: PrintBlock): void {
    const place = this.#places.get(id);
    if (place === undefined) throw new RangeError(`no block ${id}`);
    this.#blocks[place] = block;
    if (block.id !== id) this.#places = new Map(this.#blocks.map((one, at) => [one.id, at]));
    if (!this.formulas && hasFormula(block)) void this.#load();
    const [laid] = this.#measurer.measure([block]);
    this.#laid[place] = this.#laidBlock(place, laid!);
    // What stands before it may have to stay with it, or no longer.
    for (const beside of [place - 1, place + 1])
      if (this.#laid[beside]) this.#laid[beside] = this.#laidBlock(beside, this.#laid[beside]);
    this.#sides = null;
  }

  /** How many sides are printed. */
  get sides(): number {
    return this.pages.length;
  }

  /** The sides with what stands where; blocks are numbered as in `laid`. */
  get pages(): Side[] {
    return (this.#sides ??= paginate(this.#laid, this.frame));
  }

  /** What part of a side each topic takes with its own heading and lines, not with the topics below it. */
  get byTopic(): Map<string, number> {
    return sidesByTopic(this.#laid, this.frame);
  }

  /** The blocks as they lie. */
  get laid(): readonly LaidBlock[] {
    return this.#laid;
  }

  get frame(): Frame {
    return this.#measurer.frame;
  }

  get look(): PrintLook {
    return this.#measurer.look;
  }

  /** The reader of TeX; null until it is needed and there. */
  get formulas(): Formulas | null {
    return this.#measurer.formulas;
  }

  /** Whether the count is final: no formula waits to be set. */
  get isReady(): boolean {
    return this.#isReady;
  }

  /** Resolves when the count is final: at once where no formula waits to be set. */
  get ready(): Promise<void> {
    return this.#loading ?? Promise.resolve();
  }

  /** Leaves the document as it was. */
  close(): void {
    this.#isClosed = true;
    this.#measurer.close();
  }

  #load(): Promise<void> {
    this.#isReady = false;
    return (this.#loading ??= loadFormulas().then((formulas) => {
      this.#isReady = true;
      if (this.#isClosed) return;
      this.#measurer.useFormulas(formulas);
      this.#layOut();
      this.#changed();
    }));
  }

  #layOut(): void {
    this.#laid = this.#measurer.measure(this.#blocks).map((laid, place) => this.#laidBlock(place, laid));
    this.#sides = null;
  }

  #laidBlock(place: number, { parts, cells, size }: Laid): LaidBlock {
    const block = this.#blocks[place]!;
    return {
      block,
      topicId: block.topicId,
      parts,
      cells,
      ...(size && { size }),
      gap: gapAbove(block, this.#blocks[place - 1]),
      keepsNext: keepsNext(block, this.#blocks[place + 1]),
    };
  }
}

/** Whether a block needs the reader of TeX. */
function hasFormula(block: PrintBlock): boolean {
  switch (block.kind) {
    case 'line':
      return hasTex(block.lead) || hasTex(block.rest);
    case 'card':
      return hasTex(block.prompt) || hasTex(block.answer);
    default:
      return false;
  }
}
