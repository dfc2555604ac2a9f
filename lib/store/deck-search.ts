import {
  documentOfClip,
  documentOfLine,
  documentOfQuestion,
  type SearchDocument,
  type SearchKind,
} from '#lib/notes/search/document.ts';
import type { Filter } from '#lib/notes/search/filter.ts';
import { SearchIndex, type SearchResult } from '#lib/notes/search/search-index.ts';
import { type Change, onChange } from './changes.ts';
import { readInSlices, readOne } from './read.ts';
import type { Db, Row, StoreName } from './schema.ts';

/** The stores that are searched, each with the documents of its rows. */
const SEARCHED = {
  clips: { kind: 'clip', documentOf: documentOfClip },
  lines: { kind: 'line', documentOf: documentOfLine },
  questions: { kind: 'question', documentOf: documentOfQuestion },
} as const satisfies { [S in StoreName]?: { kind: SearchKind; documentOf(row: Row<S>): SearchDocument } };

type Searched = keyof typeof SEARCHED;
const STORES = Object.keys(SEARCHED) as Searched[];

/** So long, in ms, the index is worked on before the page may do something else: half a frame. */
const SLICE_MS = 8;
const ROWS_AT_A_TIME = 500;
/** So often, in ms, it tells that there is more meanwhile. */
const TELL_MS = 250;

/** The search over the rows of a course, or of all courses. It follows what is written in any page. */
export class DeckSearch {
  readonly #db: Db;
  readonly #courseId: string | null;
  readonly #index = new SearchIndex();
  readonly #hear = new Set<() => void>();
  readonly #closing: AbortSignal;
  #all = 0;
  /** What has been done so far; the next change waits for it. */
  #ready: Promise<void>;

  /**
   * Begins to read at once.
   * @param courseId null for all courses
   * @param closing ends it
   * @param failed told of an error of the database: what was being read may be missing
   */
  constructor(db: Db, courseId: string | null, closing: AbortSignal, failed: (error: unknown) => void) {
    this.#db = db;
    this.#courseId = courseId;
    this.#closing = closing;
    // Listened to before anything is read, so that nothing is missed.
    onChange((change) => {
      this.#ready = this.#ready.then(() => this.#follow(change)).catch(failed);
    }, closing);
    this.#ready = this.#readAll().catch(failed);
  }

  /** Settles when the index holds everything that was written until now. */
  get ready(): Promise<void> {
    return this.#ready;
  }

  /** How many things are in the index, and how many there are; the newest are in it first. */
  get progress(): { done: number; all: number } {
    return { done: this.#index.size, all: Math.max(this.#all, this.#index.size) };
  }

  get reader(): SearchIndex['reader'] {
    return this.#index.reader;
  }

  /** Finds what is in the index by now: see {@link SearchIndex.search}. */
  search(text: string, filter: Filter, limit: number): SearchResult {
    return this.#index.search(text, filter, limit);
  }

  /** Calls `listener` whenever more can be found, or something else, until `signal` aborts. */
  onUpdate(listener: () => void, signal: AbortSignal): void {
    this.#hear.add(listener);
    signal.addEventListener('abort', () => this.#hear.delete(listener));
  }

  async #readAll(): Promise<void> {
    const read = await Promise.all(STORES.map((store) => this.#documentsIn(store)));
    const documents = read.flat().sort((a, b) => b.createdAt - a.createdAt);
    this.#all = documents.length;
    await this.#putAll(documents);
    this.#tell();
  }

  /** Puts documents in, in slices: the page stays responsive meanwhile. */
  async #putAll(documents: readonly SearchDocument[]): Promise<void> {
    let since = performance.now();
    let told = since;
    for (const document of documents) {
      if (performance.now() - since > SLICE_MS) {
        await turn();
        if (this.#closing.aborted) return;
        since = performance.now();
        if (since - told > TELL_MS) {
          this.#tell();
          told = since;
        }
      }
      this.#index.put(document);
    }
  }

  async #documentsIn<S extends Searched>(store: S): Promise<SearchDocument[]> {
    const documents: SearchDocument[] = [];
    for await (const rows of readInSlices(this.#db, store, ROWS_AT_A_TIME))
      for (const row of rows) if (this.#isOurs(row)) documents.push(documentOf(store, row));
    return documents;
  }

  #isOurs({ courseId }: { courseId: string }): boolean {
    return this.#courseId === null || courseId === this.#courseId;
  }

  async #follow({ stores, rows }: Change): Promise<void> {
    if (this.#closing.aborted) return;
    let isChanged = false;
    for (const store of STORES.filter((one) => stores.includes(one))) {
      const ids = rows?.[store];
      const followed = ids ? await this.#readRows(store, ids) : await this.#compare(store);
      isChanged ||= followed;
    }
    if (isChanged) this.#tell();
  }

  /** Takes up the rows with these ids as they are now. */
  async #readRows<S extends Searched>(store: S, ids: readonly string[]): Promise<boolean> {
    const rows = await Promise.all(ids.map((id) => readOne(this.#db, store, id)));
    rows.forEach((row, i) => {
      if (row && this.#isOurs(row)) this.#index.put(documentOf(store, row));
      else this.#index.remove(ids[i]!);
    });
    return ids.length > 0;
  }

  /** Takes up what is not as it was, where nobody knows which rows were written. */
  async #compare(store: Searched): Promise<boolean> {
    const documents = await this.#documentsIn(store);
    const there = new Set(documents.map(({ id }) => id));
    const gone = this.#index
      .documents()
      .filter(({ id, kind }) => kind === SEARCHED[store].kind && !there.has(id));
    for (const { id } of gone) this.#index.remove(id);
    const changed = documents.filter((one) => !isSame(this.#index.get(one.id), one));
    await this.#putAll(changed);
    return gone.length + changed.length > 0;
  }

  #tell(): void {
    for (const hear of this.#hear) hear();
  }
}

const documentOf = <S extends Searched>(store: S, row: Row<S>): SearchDocument =>
  (SEARCHED[store].documentOf as (row: Row<S>) => SearchDocument)(row);

const isSame = (one: SearchDocument | undefined, other: SearchDocument): boolean =>
  one !== undefined && JSON.stringify(one) === JSON.stringify(other);

/** Lets everything else that waits have its turn. A timer would wait for four milliseconds each time. */
function turn(): Promise<void> {
  return new Promise((resolve) => {
    const { port1, port2 } = new MessageChannel();
    port1.onmessage = () => {
      port1.close();
      resolve();
    };
    port2.postMessage(null);
  });
}
