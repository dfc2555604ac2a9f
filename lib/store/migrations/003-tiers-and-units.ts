import type { Migration, UpgradeTransaction } from './migration.ts';

/**
 * Topics and statements know their tier or option, and topics what their share is given in. Until now a topic was off
 * for one reason only: a newer syllabus had dropped it.
 */
export const tiersAndUnits: Migration<2, 3> = {
  from: 2,
  to: 3,
  async run(_db, transaction) {
    await change(transaction, 'topics', (topic) => ({
      unit: 'parts',
      group: '',
      dropped: topic.off === true,
      ...topic,
    }));
    await change(transaction, 'statements', (statement) => ({ group: '', off: false, ...statement }));
  },
};

type OldRow = Record<string, unknown>;

async function change(
  transaction: UpgradeTransaction,
  store: string,
  renew: (row: OldRow) => OldRow,
): Promise<void> {
  for (let row = await transaction.objectStore(store).openCursor(); row; row = await row.continue())
    await row.update(renew(row.value as OldRow));
}
