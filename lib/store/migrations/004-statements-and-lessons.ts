import { type Migration, type OldRow, renewRows } from './migration.ts';

/** Stores whose rows say which statements they answer. */
const ANSWERING = ['clips', 'questions', 'lines'];

/**
 * Clips, questions and lines say which statements they answer, and courses what they aim at; lessons that topics should
 * have; the course packs that courses came from. What the student deleted is renewed as well, else it could not be put
 * back; that was left out when clips came to have pictures, and is made good here.
 */
export const statementsAndLessons: Migration<3, 4> = {
  from: 3,
  to: 4,
  async run(db, transaction) {
    db.createObjectStore('lessons', { keyPath: 'id' }).createIndex('course', 'courseId');
    db.createObjectStore('packs', { keyPath: 'courseId' });
    for (const store of ANSWERING) await renewRows(transaction, store, withStatements);
    await renewRows(transaction, 'courses', (course) => ({
      targetSides: 8,
      targetQuestions: 100,
      ...course,
    }));
    await renewRows(transaction, 'setAside', (aside) => {
      const isOurs = ANSWERING.includes(String(aside.store)) && aside.why === 'deleted';
      const row = aside.row as OldRow;
      const pictures = aside.store === 'clips' ? { pictureIds: [] } : {};
      return isOurs ? { ...aside, row: { ...pictures, ...withStatements(row) } } : aside;
    });
  },
};

const withStatements = (row: OldRow): OldRow => ({ statementIds: [], ...row });
