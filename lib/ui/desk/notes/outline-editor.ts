import { type Line, LONGEST_LINE, NEW_LINE } from '#lib/model/item.ts';
import type { StepName } from '#lib/model/step.ts';
import type { LeftOut } from '#lib/model/left-out.ts';
import {
  type LineText,
  joinedText,
  movedEnd,
  partsOf,
  splitAt,
  suggestedEnd,
  textOfLine,
  wholeAt,
} from '#lib/notes/lines/line-text.ts';
import { type Outlined, placed } from '#lib/notes/lines/placed.ts';
import {
  type Move,
  atShownDepths,
  movedIn,
  movedOut,
  movedPast,
  placeAfter,
} from '#lib/notes/lines/outline.ts';
import { sameRows } from '../../same-rows.ts';
import { LineKeeper } from './line-keeper.ts';
import type { LineEdit } from '#lib/store/actions/lines.ts';

/** Where the student is: in a line, with the caret at a place of its text. */
export interface Spot {
  id: string;
  caret: number;
}

interface EditorOptions {
  courseId: string;
  topicId: string;
  /** Carries out an action in the deck; resolves once it is on disk. */
  save(edit: LineEdit): Promise<void>;
  newId(): string;
  /** Called after each change of what is to be shown. */
  changed(): void;
}

/**
 * The lines of a topic while they are edited. What the student does shows at once and is written behind it, in order;
 * what others change comes in when nothing of this is on its way.
 */
export class OutlineEditor {
  /** In their order, at the depths that are shown. */
  lines: readonly Line[] = [];
  /** The line in hand; it stays so while the focus is elsewhere. */
  spot: Spot | null = null;
  /** The text of the line in hand, as it stands in its field. */
  typed: LineText | null = null;
  readonly keeper: LineKeeper;
  readonly #options: EditorOptions;
  /** Whether the text in hand was changed since it was last sent to be written. */
  #dirty = false;

  constructor(options: EditorOptions) {
    this.#options = options;
    this.keeper = new LineKeeper({
      save: options.save,
      changed: options.changed,
      send: () => this.#sendTyped(),
    });
  }

  /** Takes in the lines as the deck has them; later where something is on its way there. Gives whether it did. */
  adopt(rows: readonly Line[]): boolean {
    if (this.keeper.isBusy || this.#dirty) return false;
    const shown = sameRows(this.lines, atShownDepths(rows));
    if (shown === this.lines) return true;
    this.lines = shown;
    const line = this.#lineInHand();
    if (!line) this.#leave();
    else if (this.typed) {
      const { lead, rest } = partsOf(this.typed);
      // White space that the student is about to type on from is not taken away.
      if (lead !== line.lead || rest !== line.rest) this.typed = textOfLine(line);
    }
    this.#options.changed();
    return true;
  }

  /** Goes into a line. Where no caret is given, to its end. */
  enter(id: string, caret?: number): void {
    const line = this.lines.find((one) => one.id === id);
    if (!line) return;
    if (this.spot?.id !== id) {
      this.#settle();
      this.typed = textOfLine(line);
    }
    this.spot = { id, caret: Math.min(caret ?? Infinity, this.typed!.text.length) };
    this.#options.changed();
  }

  /** Goes to the line before or after the one in hand; gives whether there is one. */
  step(way: -1 | 1): boolean {
    const next = this.lines[this.#place() + way];
    if (this.spot && next) this.enter(next.id, way < 0 ? undefined : 0);
    return next !== undefined;
  }

  /** The text of the line in hand was changed to this; the caret stands at its end unless told. */
  type(text: string, caret = text.length): void {
    if (!this.typed) return;
    this.typed = { text, leadEnd: movedEnd(this.typed, text, caret) };
    this.#touch();
  }

  /** The lead of the line in hand ends here; at its end, nothing is covered. */
  endLead(at: number): void {
    if (!this.typed) return;
    this.typed = { ...this.typed, leadEnd: wholeAt(this.typed.text, at) };
    this.#touch();
    this.keeper.hurry();
  }

  /** Enter: what stands after the caret becomes a line of its own. */
  split(caret: number): void {
    const line = this.#lineInHand();
    if (!line || !this.typed) return;
    const [first, second] = splitAt(this.typed, wholeAt(this.typed.text, caret));
    const added = this.#newLine(this.#place(), partsOf(second), line.depth);
    // Before a line that has text: the empty one is the new one, so that the line keeps its attempts.
    if (first.text === '' && second.text !== '') {
      const above = this.#newLine(this.#place() - 1, { lead: '', rest: '' }, line.depth);
      this.#do('addLine', { add: [above.line], moves: above.moves });
      return;
    }
    const parts = partsOf(first);
    this.#dirty = false;
    this.#do('splitLine', { change: [{ id: line.id, ...parts }], add: [added.line], moves: added.moves });
    this.spot = { id: added.line.id, caret: 0 };
    this.typed = second;
    this.#options.changed();
  }

  /** Backspace at the start of the line in hand, or Delete at the end of the one before: both become one. */
  joinBefore(): void {
    const at = this.#place();
    const [before, line] = [this.lines[at - 1], this.lines[at]];
    if (!before || !line || !this.typed) return;
    const first = textOfLine(before);
    const text = joinedText(first, this.typed);
    if (text.text.length > LONGEST_LINE) return;
    this.#dirty = false;
    // The one that has been recalled or has a question is kept, whatever was typed first.
    const [kept, gone] = first.text === '' ? [line, before] : [before, line];
    const place = kept === line ? { order: before.order, depth: before.depth } : {};
    this.#do('joinLines', { change: [{ id: kept.id, ...partsOf(text), ...place }], remove: [gone.id] });
    this.spot = {
      id: kept.id,
      caret: first.text === '' ? 0 : first.text.length + (this.typed.text === '' ? 0 : 1),
    };
    this.typed = text;
    this.#options.changed();
  }

  /** Delete at the end of the line in hand. */
  joinAfter(): void {
    const next = this.lines[this.#place() + 1];
    if (!this.spot || !next) return;
    this.enter(next.id, 0);
    this.joinBefore();
  }

  moveIn(): void {
    this.#move(movedIn(this.lines, this.spot?.id ?? ''));
  }

  moveOut(): void {
    this.#move(movedOut(this.lines, this.spot?.id ?? ''));
  }

  /** Moves the line in hand up or down. A field that is moved loses the caret: it is put where it was. */
  movePast(way: 'up' | 'down', caret: number): void {
    if (!this.spot) return;
    this.spot = { ...this.spot, caret };
    this.#move(movedPast(this.lines, this.spot.id, way));
  }

  leaveOut(id: string, leftOut: LeftOut): void {
    this.#do(leftOut ? 'leaveOut' : 'takeIn', { change: [{ id, leftOut }] });
  }

  setPictures(id: string, pictureIds: string[]): void {
    this.#do('placePicture', { change: [{ id, pictureIds }] });
  }

  /** Takes a line away, and goes to the one before it. */
  remove(id: string): void {
    const at = this.lines.findIndex((line) => line.id === id);
    if (at < 0) return;
    const next = this.lines[at - 1] ?? this.lines[at + 1];
    this.#dirty &&= this.spot?.id !== id;
    this.#do('removeLine', { remove: [id] });
    if (next) this.enter(next.id);
    else this.#leave();
    this.#options.changed();
  }

  /** New lines after the one in hand, or at the end: their texts, and the clip that they are from. Goes to the last. */
  add(texts: readonly string[], clipId: string | null = null): void {
    const at = this.spot ? this.#place() : this.lines.length - 1;
    const depth = this.lines[at]?.depth ?? 0;
    let shown = this.lines;
    const added: Line[] = [];
    const moves: Move[] = [];
    for (const [i, text] of texts.entries()) {
      const parts = partsOf({ text, leadEnd: suggestedEnd(text) ?? text.length });
      const one = this.#newLine(at + i, parts, depth, clipId, shown);
      added.push(one.line);
      moves.push(...one.moves);
      shown = placed(shown, { add: [one.line], moves: one.moves });
    }
    const last = added.at(-1);
    if (!last) return;
    // An empty line in hand was begun for what comes now.
    const empty = this.typed?.text === '' && this.spot ? [this.spot.id] : [];
    this.#do('addLine', {
      add: added,
      moves: moves.filter(({ id }) => !added.some((line) => line.id === id)),
      remove: empty,
    });
    this.enter(last.id);
  }

  /** Writes what is typed; resolves once everything is on disk, or has failed. */
  async flush(): Promise<void> {
    this.#sendTyped();
    await this.keeper.settled();
  }

  #lineInHand(): Line | undefined {
    return this.lines.find(({ id }) => id === this.spot?.id);
  }

  #place(): number {
    return this.lines.findIndex(({ id }) => id === this.spot?.id);
  }

  #newLine(
    at: number,
    parts: Pick<Line, 'lead' | 'rest'>,
    depth: number,
    clipId: string | null = null,
    among = this.lines,
  ): { line: Line; moves: Move[] } {
    const { courseId, topicId, newId } = this.#options;
    const { order, moves } = placeAfter(among, at);
    const line = { ...NEW_LINE, id: newId(), courseId, topicId, clipId, ...parts, order, depth };
    return { line: { ...line, createdAt: 0, changedAt: 0 }, moves };
  }

  #move(moves: readonly Move[]): void {
    if (moves.length > 0) this.#do('moveLine', { moves });
  }

  /** Shows an action and sends it to be written, after what was typed before it. */
  #do(name: StepName, { change = [], moves = [], add = [], remove = [] }: Outlined): void {
    this.#sendTyped();
    this.lines = placed(this.lines, { change, moves, add, remove });
    this.keeper.send({ name, change: [...change, ...moves], add: add.map(drafted), remove });
    this.#options.changed();
  }

  #touch(): void {
    const { id } = this.spot!;
    this.#dirty = true;
    this.lines = placed(this.lines, { change: [{ id, ...partsOf(this.typed!) }] });
    this.keeper.wait();
    this.#options.changed();
  }

  #sendTyped(): void {
    if (!this.#dirty || !this.spot || !this.typed) return;
    this.#dirty = false;
    const { id } = this.spot;
    this.keeper.send({ name: 'changeLine', joins: `line ${id}`, change: [{ id, ...partsOf(this.typed) }] });
  }

  /** Before another line is entered: what was typed is sent. */
  #settle(): void {
    this.#sendTyped();
    this.typed = null;
  }

  #leave(): void {
    this.spot = null;
    this.typed = null;
  }
}

const drafted = ({ createdAt: _created, changedAt: _changed, ...line }: Line) => line;
