import { type Migration, renewRows } from './migration.ts';

/**
 * Topics and statements know their tier or option, and topics what their share is given in. Until now a topic was off
 * for one reason only: a newer syllabus had dropped it.
 */
export const tiersAndUnits: Migration<2, 3> = {
  from: 2,
  to: 3,
  async run(_db, transaction) {
    await renewRows(transaction, 'topics', (topic) => ({
      unit: 'parts',
      group: '',
      dropped: topic.off === true,
      ...topic,
    }));
    await renewRows(transaction, 'statements', (statement) => ({ group: '', off: false, ...statement }));
  },
};
