import { type Migration, type OldRow, renewRows } from './migration.ts';

/**
 * Condensed notes: lines stand at a depth and hold pictures, lines and clips can be left out, questions stand beside
 * lines, what cleared an unclear mark is kept, courses know what their notes are printed on, and steps can be undone.
 * Attempts say in which order their round went and from which side they were asked; of earlier ones that is not known.
 */
export const notes: Migration<4, 5> = {
  from: 4,
  to: 5,
  async run(db, transaction) {
    db.createObjectStore('steps', { autoIncrement: true });
    db.createObjectStore('memories', { keyPath: 'courseId' });
    transaction.objectStore('attempts').createIndex('courseAt', ['courseId', 'at']);
    for (const [store, fields] of Object.entries(ADDED))
      await renewRows(transaction, store, (row) => ({ ...fields, ...row }));
    await renewRows(transaction, 'setAside', (aside) => {
      const fields = ADDED[String(aside.store)];
      return fields && aside.why === 'deleted'
        ? { ...aside, row: { ...fields, ...(aside.row as OldRow) } }
        : aside;
    });
  },
};

const ADDED: Record<string, OldRow> = {
  courses: { paper: 'a4', columns: 2 },
  topics: { unclear: false, cleared: [] },
  clips: { leftOut: null, cleared: [] },
  lines: { depth: 0, leftOut: null, pictureIds: [] },
  questions: { lineId: null },
  attempts: { order: null, turned: false },
};
