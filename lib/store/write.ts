import type { IDBPTransaction } from 'idb';
import type { Attempt } from '#lib/model/attempt.ts';
import { StudentError } from '#lib/model/student-error.ts';
import { announce } from './changes.ts';
import type { Db, Deck, Row, StoreName } from './schema.ts';
import { ROWS } from './schema.ts';
import { TouchedRows } from './touched.ts';

export type WriteTransaction<S extends StoreName> = IDBPTransaction<Deck, S[], 'readwrite'>;

/**
 * One action of the student, in one transaction: all of it is on disk when this resolves (strict durability), or
 * nothing is. Other pages are told afterwards.
 * @param attempt where it is all that is written besides caches: it is told along
 * Errors: StudentError `errorStorageFull` or `errorNotSaved`; StudentErrors from `work` pass through.
 */
export async function write<S extends StoreName, T>(
  db: Db,
  stores: S[],
  work: (transaction: WriteTransaction<S>) => Promise<T>,
  attempt?: Attempt,
): Promise<T> {
  let transaction: WriteTransaction<S> | undefined;
  const touched = new TouchedRows(stores);
  try {
    transaction = db.transaction(stores, 'readwrite', { durability: 'strict' });
    const result = await work(touched.watch(transaction));
    await transaction.done;
    announce(stores, attempt, touched.told());
    return result;
  } catch (cause) {
    abort(transaction);
    throw asStudentError(cause);
  }
}

function abort(transaction: { done: Promise<void>; abort(): void } | undefined): void {
  if (!transaction) return;
  // The rejection of `done` repeats the error that is thrown to the caller already.
  transaction.done.catch(() => undefined);
  try {
    transaction.abort();
  } catch (error) {
    // Aborted by the database itself: nothing is left to undo.
    if (!(error instanceof DOMException && error.name === 'InvalidStateError')) throw error;
  }
}

function asStudentError(cause: unknown): Error {
  if (cause instanceof StudentError) return cause;
  if (cause instanceof DOMException && cause.name === 'QuotaExceededError')
    return new StudentError('errorStorageFull');
  return new StudentError('errorNotSaved', cause instanceof Error ? cause.message : String(cause));
}

/**
 * Checks a row before it is written, so that the deck never holds what it could not read back.
 * Errors: StudentError `errorFieldWrong` naming the first field that is wrong.
 */
export function checked<S extends StoreName>(store: S, row: Row<S>): Row<S> {
  const result = ROWS[store].safeParse(row);
  if (result.success) return result.data as Row<S>;
  const issue = result.error.issues[0]!;
  throw new StudentError('errorFieldWrong', issue.path.join('.'), issue.message);
}
