import type { Migration } from './migration.ts';

/** The first deck: courses with their syllabus, sources, clips, questions, lines and attempts. */
export const firstDeck: Migration<0, 1> = {
  from: 0,
  to: 1,
  run(db) {
    db.createObjectStore('courses', { keyPath: 'id' });
    const byCourse = (name: string) => {
      const store = db.createObjectStore(name, { keyPath: 'id' });
      store.createIndex('course', 'courseId');
      return store;
    };
    byCourse('topics');
    byCourse('statements');
    db.createObjectStore('sources', { keyPath: 'id' }).createIndex('url', 'url');
    byCourse('clips').createIndex('source', 'sourceId');
    byCourse('questions').createIndex('clip', 'clipId');
    byCourse('lines').createIndex('clip', 'clipId');
    byCourse('attempts').createIndex('item', 'itemId');
    db.createObjectStore('settings');
    db.createObjectStore('nextUp', { keyPath: 'courseId' });
    db.createObjectStore('setAside', { autoIncrement: true });
  },
};
