import type { IDBPDatabase, IDBPTransaction } from 'idb';

/** The database as a migration sees it: untyped, since it must not lean on today's schema. */
export type OldDb = IDBPDatabase<unknown>;
export type UpgradeTransaction = IDBPTransaction<unknown, string[], 'versionchange'>;

/** A row of an older deck, whatever it is. */
export type OldRow = Record<string, unknown>;

/** Renews every row of a store. */
export async function renewRows(
  transaction: UpgradeTransaction,
  store: string,
  renew: (row: OldRow) => OldRow,
): Promise<void> {
  for (let row = await transaction.objectStore(store).openCursor(); row; row = await row.continue())
    await row.update(renew(row.value as OldRow));
}

/** One step from a version to the next. It freezes the shapes that it needs and imports no schema. */
export interface Migration<From extends number, To extends number> {
  from: From;
  to: To;
  run(db: OldDb, transaction: UpgradeTransaction): void | Promise<void>;
}

/** Migrations in order; `then` accepts only the step that starts where the last one ended. */
export class MigrationChain<At extends number> {
  readonly version: At;
  readonly steps: readonly Migration<number, number>[];

  constructor(version: At, steps: readonly Migration<number, number>[]) {
    this.version = version;
    this.steps = steps;
  }

  then<To extends number>(step: Migration<At, To>): MigrationChain<To> {
    return new MigrationChain(step.to, [...this.steps, step]);
  }

  /** The steps that bring a database of `oldVersion` to this version. */
  after(oldVersion: number): readonly Migration<number, number>[] {
    return this.steps.filter((step) => step.from >= oldVersion);
  }
}

export const emptyDeck = new MigrationChain(0, []);
