import type { LineEdit } from '#lib/store/actions/lines.ts';
import { tell } from '../../text.ts';

/** Typing is written when it pauses this long, and at the latest so long after it began, in milliseconds. */
const PAUSE = 300;
const LONGEST_WAIT = 1500;

interface KeeperOptions {
  save(edit: LineEdit): Promise<void>;
  /** Hands over what was typed, by `send`. */
  send(): void;
  changed(): void;
}

/** Writes actions one after another, and says how far it has got. */
export class LineKeeper {
  /** What went wrong with the latest action; null where nothing did. */
  trouble: string | null = null;
  readonly #options: KeeperOptions;
  #queue: Promise<void> = Promise.resolve();
  #count = 0;
  #pause: ReturnType<typeof setTimeout> | undefined;
  #latest: ReturnType<typeof setTimeout> | undefined;
  /** Actions that failed: they are tried again with the next one. */
  #failed: LineEdit[] = [];

  constructor(options: KeeperOptions) {
    this.#options = options;
  }

  /** Whether something is on its way to the deck, or failed to get there. */
  get isBusy(): boolean {
    return this.#count > 0 || this.#failed.length > 0;
  }

  /** Whether typing waits for a pause. */
  get isWaiting(): boolean {
    return this.#pause !== undefined;
  }

  /** Something was typed: it is written after a pause. */
  wait(): void {
    clearTimeout(this.#pause);
    this.#pause = setTimeout(() => this.hurry(), PAUSE);
    this.#latest ??= setTimeout(() => this.hurry(), LONGEST_WAIT);
  }

  /** What was typed is written now. */
  hurry(): void {
    this.#stopWaiting();
    this.#options.send();
  }

  /** Writes an action after those before it. */
  send(edit: LineEdit): void {
    this.#stopWaiting();
    this.#count++;
    this.#queue = this.#queue.then(() => this.#write(edit));
  }

  /** Tries again what failed. */
  retry(): void {
    this.#count++;
    this.#queue = this.#queue.then(() => this.#write());
  }

  /** Resolves once everything sent is on disk, or has failed. */
  async settled(): Promise<void> {
    for (let queue; queue !== this.#queue;) await (queue = this.#queue);
  }

  async #write(edit?: LineEdit): Promise<void> {
    const all = edit ? [...this.#failed, edit] : this.#failed;
    this.#failed = [];
    try {
      for (let one = all[0]; one; one = all[0]) {
        await this.#options.save(one);
        all.shift();
      }
      this.trouble = null;
    } catch (error) {
      this.#failed = all;
      this.trouble = tell(error);
    } finally {
      this.#count--;
      this.#options.changed();
    }
  }

  #stopWaiting(): void {
    clearTimeout(this.#pause);
    clearTimeout(this.#latest);
    this.#pause = this.#latest = undefined;
  }
}
