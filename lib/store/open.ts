import { openDB } from 'idb';
import { StudentError } from '#lib/model/student-error.ts';
import { migrations } from './migrations/index.ts';
import type { OldDb, UpgradeTransaction } from './migrations/migration.ts';
import type { Db, Deck } from './schema.ts';

export const DECK_NAME = 'plumbline';

export interface OpenOptions {
  name?: string;
  /** Called when another window runs an older version of the extension and stands in the way. */
  onBlocked?: () => void;
  /** Called when this connection was closed, by a newer version elsewhere or by the browser. */
  onClosed?: () => void;
}

/**
 * Opens the deck, bringing an older one up to date first. A migration that fails aborts as a whole: the deck on disk
 * stays as it was.
 * Errors: StudentError `errorDeckNewer` when the deck was written by a newer version, `errorDeckUnopened` otherwise.
 */
export async function openDeck({ name = DECK_NAME, onBlocked, onClosed }: OpenOptions = {}): Promise<Db> {
  try {
    const db = await openDB<Deck>(name, migrations.version, {
      async upgrade(database, oldVersion, _newVersion, transaction) {
        for (const step of migrations.after(oldVersion)) {
          await step.run(database as unknown as OldDb, transaction as unknown as UpgradeTransaction);
        }
      },
      blocked: () => onBlocked?.(),
      // A newer version wants to upgrade: stand aside, or it would wait for this window for ever.
      blocking(_current, _blocked, event) {
        (event.target as IDBDatabase).close();
        onClosed?.();
      },
      terminated: () => onClosed?.(),
    });
    return db;
  } catch (cause) {
    const reason = cause instanceof DOMException ? cause.name : String(cause);
    throw reason === 'VersionError'
      ? new StudentError('errorDeckNewer')
      : new StudentError('errorDeckUnopened', reason);
  }
}
