import type { StoreName } from './schema.ts';

/** More rows than these are not told one by one. */
const MOST = 1000;

/** By store, the ids of the rows that an action wrote or deleted. Where a store is missing, any of its rows may have changed. */
export type Touched = Partial<Record<StoreName, string[]>>;

interface Store {
  put(row: unknown, key?: unknown): unknown;
  add(row: unknown, key?: unknown): unknown;
  delete(key: unknown): unknown;
  clear(): unknown;
}

/** Notes which rows a transaction writes. */
export class TouchedRows {
  readonly #ids: Map<StoreName, Set<string> | null>;

  /** @param stores those that the transaction may write */
  constructor(stores: readonly StoreName[]) {
    this.#ids = new Map(stores.map((store) => [store, new Set()]));
  }

  /** The same transaction; what is written through it is noted. */
  watch<T extends object>(transaction: T): T {
    const { objectStore } = transaction as { objectStore(name: StoreName): Store };
    return through(transaction, {
      objectStore: (name: StoreName) => this.#watchStore(objectStore.call(transaction, name), name),
    });
  }

  told(): Touched {
    const told: Touched = {};
    for (const [store, ids] of this.#ids) if (ids && ids.size <= MOST) told[store] = [...ids];
    return told;
  }

  #watchStore(store: Store, name: StoreName): Store {
    return through(store, {
      put: (row: unknown, ...key: unknown[]) => {
        this.#note(name, idOf(row));
        return store.put(row, ...key);
      },
      add: (row: unknown, ...key: unknown[]) => {
        this.#note(name, idOf(row));
        return store.add(row, ...key);
      },
      delete: (key: unknown) => {
        this.#note(name, key);
        return store.delete(key);
      },
      clear: () => {
        this.#note(name, undefined);
        return store.clear();
      },
    });
  }

  /** Anything but one id means that nobody knows which rows. */
  #note(store: StoreName, id: unknown): void {
    if (typeof id === 'string') this.#ids.get(store)?.add(id);
    else this.#ids.set(store, null);
  }
}

const idOf = (row: unknown): unknown => (row as { id?: unknown } | null)?.id;

/** An object with some of its methods replaced. */
function through<T extends object>(object: T, methods: Record<string, unknown>): T {
  return new Proxy(object, {
    get: (target, name) => {
      if (typeof name === 'string' && Object.hasOwn(methods, name)) return methods[name];
      const value: unknown = Reflect.get(target, name);
      return typeof value === 'function' ? value.bind(target) : value;
    },
  });
}
