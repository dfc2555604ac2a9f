import type { IDBPTransaction } from 'idb';
import type { Migration } from './migration.ts';

/** Pictures of clips and files of sources; when a source was published, and its licence. */
export const picturesAndFiles: Migration<1, 2> = {
  from: 1,
  to: 2,
  async run(db, transaction) {
    const pictures = db.createObjectStore('pictures', { keyPath: 'id' });
    pictures.createIndex('course', 'courseId');
    pictures.createIndex('clip', 'clipId');
    db.createObjectStore('files', { keyPath: 'id' }).createIndex('source', 'sourceId');
    await addTo(transaction, 'sources', { published: '', licence: '' });
    await addTo(transaction, 'clips', { pictureIds: [] });
  },
};

async function addTo(
  transaction: IDBPTransaction<unknown, string[], 'versionchange'>,
  store: string,
  fields: object,
): Promise<void> {
  for (let row = await transaction.objectStore(store).openCursor(); row; row = await row.continue())
    await row.update({ ...fields, ...(row.value as object) });
}
