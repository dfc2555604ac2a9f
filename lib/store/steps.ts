import { type RowChange, Step, type StepName } from '#lib/model/step.ts';
import { StudentError } from '#lib/model/student-error.ts';
import type { Db, StoreName } from './schema.ts';
import { type WriteTransaction, write } from './write.ts';

/** Steps that are kept to be undone. */
export const MOST_STEPS = 300;

/** Two steps of a run of typing are one if no more time than this lies between them, in milliseconds. */
export const JOIN_WITHIN = 2000;

/** Stores whose rows a step puts back: all have an `id`. Facts and caches are in none. */
export type StepStore = 'clips' | 'topics' | 'questions' | 'lines' | 'lessons' | 'sources' | 'pictures';
const STEP_STORES: ReadonlySet<string> = new Set<StepStore>([
  'clips',
  'topics',
  'questions',
  'lines',
  'lessons',
  'sources',
  'pictures',
]);

/** What an action is called, so that it can be undone. */
export interface StepDraft {
  name: StepName;
  /** Epoch ms. */
  at: number;
  /** The run of typing that it belongs to; none unless given. */
  joins?: string;
}

/**
 * One action, as `write` does it, that can be undone: what it changes is kept with it, in the same transaction. Stores
 * that are not a StepStore are written as usual and stay as they are when it is undone.
 */
export function writeStep<S extends StoreName, T>(
  db: Db,
  draft: StepDraft,
  stores: readonly S[],
  work: (transaction: WriteTransaction<S>) => Promise<T>,
): Promise<T> {
  return write(db, [...stores, 'steps' as const], async (transaction) => {
    const { watched, changes } = watch(transaction as unknown as WriteTransaction<StoreName>);
    const result = await work(watched as unknown as WriteTransaction<S>);
    const rows = [...changes.values()].filter(({ before, after }) => !isSame(before, after));
    if (rows.length > 0) await keep(transaction as unknown as WriteTransaction<'steps'>, draft, rows);
    return result;
  });
}

type Changes = Map<string, RowChange>;

/** The transaction, which notes down each row of a StepStore before and after it is written. */
function watch(transaction: WriteTransaction<StoreName>) {
  const changes: Changes = new Map();
  const watched = new Proxy(transaction, {
    get(target, field) {
      if (field === 'objectStore')
        return (name: StoreName) => {
          const store = target.objectStore(name);
          return STEP_STORES.has(name) ? watchStore(store as never, name, changes) : store;
        };
      return valueOf(target, field);
    },
  });
  return { watched, changes };
}

interface WatchedStore {
  get(key: string): Promise<unknown>;
  put(row: { id: string }): Promise<unknown>;
  add(row: { id: string }): Promise<unknown>;
  delete(key: string): Promise<unknown>;
}

function watchStore(store: WatchedStore, name: string, changes: Changes): WatchedStore {
  const note = async (key: string, after: unknown) => {
    const place = `${name} ${key}`;
    const known = changes.get(place);
    if (known) known.after = after;
    else changes.set(place, { store: name, key, before: await store.get(key), after });
  };
  const own: Partial<WatchedStore> = {
    async put(row) {
      await note(row.id, row);
      return store.put(row);
    },
    async add(row) {
      await note(row.id, row);
      return store.add(row);
    },
    async delete(key) {
      await note(key, undefined);
      return store.delete(key);
    },
  };
  return new Proxy(store, {
    get: (target, field) => own[field as keyof WatchedStore] ?? valueOf(target, field),
  });
}

/** A field of the database's own objects: their methods want to be called on them. */
function valueOf(target: object, field: string | symbol): unknown {
  const value: unknown = Reflect.get(target, field, target);
  return typeof value === 'function' ? value.bind(target) : value;
}

async function keep(transaction: WriteTransaction<'steps'>, draft: StepDraft, rows: RowChange[]) {
  const steps = transaction.objectStore('steps');
  // What was undone cannot be done again once something else was done.
  let cursor = await steps.openCursor(null, 'prev');
  while (cursor?.value.undone) {
    await cursor.delete();
    cursor = await cursor.continue();
  }
  const step: Step = { joins: '', ...draft, rows, undone: false };
  const last = cursor?.value;
  if (cursor && last && step.joins !== '' && last.joins === step.joins && step.at - last.at <= JOIN_WITHIN) {
    await steps.put({ ...last, at: step.at, rows: joined(last.rows, rows) }, cursor.primaryKey);
    return;
  }
  await steps.add(step);
  const tooMany = (await steps.count()) - MOST_STEPS;
  if (tooMany <= 0) return;
  const oldest = await steps.getAllKeys(null, tooMany);
  await steps.delete(IDBKeyRange.upperBound(oldest.at(-1)!));
}

function joined(before: readonly RowChange[], after: readonly RowChange[]): RowChange[] {
  const rows = new Map(before.map((row) => [`${row.store} ${row.key}`, { ...row }]));
  for (const row of after) {
    const known = rows.get(`${row.store} ${row.key}`);
    if (known) known.after = row.after;
    else rows.set(`${row.store} ${row.key}`, row);
  }
  return [...rows.values()];
}

/** Whether two rows say the same, whenever they were changed. */
function isSame(a: unknown, b: unknown): boolean {
  return JSON.stringify(undated(a)) === JSON.stringify(undated(b));
}

const undated = (row: unknown): unknown => (row === undefined ? null : { ...(row as object), changedAt: 0 });

/** What can be undone and redone next, by its step; null where there is nothing. */
export interface StepsNow {
  undo: { key: number; name: StepName } | null;
  redo: { key: number; name: StepName } | null;
}

/** Looks at the latest steps. */
export async function readSteps(db: Db): Promise<StepsNow> {
  let redo: StepsNow['redo'] = null;
  let cursor = await db.transaction('steps').store.openCursor(null, 'prev');
  for (; cursor; cursor = await cursor.continue()) {
    const step = Step.safeParse(cursor.value).data;
    if (!step) continue;
    if (!step.undone) return { undo: { key: cursor.primaryKey, name: step.name }, redo };
    redo = { key: cursor.primaryKey, name: step.name };
  }
  return { undo: null, redo };
}

/**
 * Undoes a step, or does an undone one again: every row of it, or none.
 * @param at epoch ms
 * @returns the name of the step; null where it is gone or was turned already
 * Errors: StudentError `errorStepChanged` where a row was changed since by something that is no step: the step is then
 * forgotten, so that those before it can be undone.
 */
export async function turnStep(
  db: Db,
  key: number,
  way: 'undo' | 'redo',
  at: number,
): Promise<StepName | null> {
  const known = Step.safeParse(await db.get('steps', key)).data;
  if (!known) return null;
  const stores = [...new Set(known.rows.map(({ store }) => store))].filter((name): name is StepStore =>
    STEP_STORES.has(name),
  );
  const turned = await write(db, [...stores, 'steps', 'nextUp', 'setAside'], async (transaction) => {
    const steps = transaction.objectStore('steps');
    const step = Step.safeParse(await steps.get(key)).data;
    if (!step || step.undone === (way === 'undo')) return null;
    for (const row of step.rows) {
      const now = await transaction.objectStore(row.store as StepStore).get(row.key);
      // One that is there already, as by putting a deleted row back, is no hindrance.
      if (isSame(now, row.after) || isSame(now, row.before)) continue;
      await steps.delete(key);
      return 'changed' as const;
    }
    for (const row of step.rows) await put(transaction, row, way === 'undo' ? row.before : row.after, at);
    await steps.put({ ...step, undone: way === 'undo' }, key);
    await transaction.objectStore('nextUp').clear();
    return step.name;
  });
  if (turned === 'changed') throw new StudentError('errorStepChanged');
  return turned;
}

/** Puts a row as it was. What was deleted stands among the rows set aside meanwhile. */
async function put(
  transaction: WriteTransaction<StepStore | 'setAside' | 'steps' | 'nextUp'>,
  { store, key }: RowChange,
  row: unknown,
  at: number,
): Promise<void> {
  const rows = transaction.objectStore(store as StepStore);
  const aside = transaction.objectStore('setAside');
  const now = await rows.get(key);
  if (row === undefined) {
    if (now === undefined) return;
    await rows.delete(key);
    // Sources and pictures go with their clips; the step itself still has them.
    if (store === 'sources' || store === 'pictures') return;
    await aside.add({ store, row: now, why: 'deleted', problem: '', at });
    return;
  }
  if (now === undefined)
    for (let cursor = await aside.openCursor(); cursor; cursor = await cursor.continue()) {
      const { why, store: from, row: kept } = cursor.value;
      if (why === 'deleted' && from === store && (kept as { id?: unknown }).id === key) await cursor.delete();
    }
  const dated = 'changedAt' in (row as object) ? { ...(row as object), changedAt: at } : row;
  await rows.put(dated as never);
}
