import { findPassages } from '#lib/capture/find/find-passages.ts';
import type { Found } from '#lib/capture/find/found.ts';
import { clearRanges, paintRanges } from '#lib/capture/find/highlight.ts';
import type { ClipsHere } from '#lib/model/message.ts';

const NAME = 'plumbline-clips';

interface Place {
  range: Range;
  /** What stood there when it was found. */
  text: string;
  isSure: boolean;
}

/** Where the clips of a page are, painted without touching the page; found anew where it has rewritten itself. */
export class ClipsInPage {
  readonly #doc: Document;
  readonly #clips: ClipsHere['clips'];
  readonly #signal: AbortSignal;
  readonly #places = new Map<string, Place>();

  constructor(doc: Document, clips: ClipsHere['clips'], signal: AbortSignal) {
    this.#doc = doc;
    this.#clips = clips.filter(({ selectors }) => selectors.some(({ type }) => type !== 'FragmentSelector'));
    this.#signal = signal;
    signal.addEventListener('abort', () => clearRanges(doc.defaultView!, NAME));
  }

  /** Where a clip is; null where it was not found. */
  rangeOf(clipId: string): Range | null {
    return this.#places.get(clipId)?.range ?? null;
  }

  /**
   * Looks for the clips that are not shown, or not surely, and shows what it finds. Gives what that took of the main
   * thread, in ms.
   */
  async look(): Promise<number> {
    const wanted = this.#clips.filter(({ clipId }) => !isSettled(this.#places.get(clipId)));
    if (wanted.length === 0) return 0;
    let [busy, resumed] = [0, performance.now()];
    const pause = async () => {
      busy += performance.now() - resumed;
      await new Promise((rested) => setTimeout(rested, 0));
      resumed = performance.now();
    };
    const pace = { now: () => performance.now(), pause };
    for await (const { wanted: clip, found } of findPassages(this.#doc.body, wanted, pace)) {
      if (this.#signal.aborted) return busy;
      this.#keep(clip.clipId, found);
    }
    const ranges = [...this.#places.values()].map(({ range }) => range);
    paintRanges(this.#doc.defaultView!, NAME, ranges);
    return busy + performance.now() - resumed;
  }

  #keep(clipId: string, found: Found | null): void {
    if (!found) return void this.#places.delete(clipId);
    const { range, how } = found;
    this.#places.set(clipId, { range, text: range.toString(), isSure: how !== 'fuzzy' });
  }
}

/** Still there to the letter: what a page takes out takes its range along, and a better place may come for a poor one. */
const isSettled = (place: Place | undefined): boolean =>
  place !== undefined && place.isSure && place.range.toString() === place.text;
