import { MORNING } from '#tests/unit/builders.ts';
import type { PageDriver } from '../driver.ts';
import type { PrintDeck } from './decks.ts';

/** Makes a deck the only one that the extension has, and tells its open pages. */
export async function putDeck(page: PageDriver, deck: PrintDeck): Promise<void> {
  await page.run(
    async (rows, at) => {
      const pictures = await Promise.all(
        rows.pictures.map(async ({ id, width, height, alt }) => {
          const canvas = new OffscreenCanvas(width, height);
          const pen = canvas.getContext('2d')!;
          pen.strokeStyle = 'black';
          pen.lineWidth = 8;
          pen.strokeRect(4, 4, width - 8, height - 8);
          const bytes = await canvas.convertToBlob();
          const kept = { id, createdAt: at, changedAt: at, courseId: rows.course.id, clipId: id };
          return { ...kept, bytes, type: 'image/png', width, height, alt };
        }),
      );
      const stores = {
        courses: [rows.course],
        topics: rows.topics,
        lines: rows.lines,
        questions: rows.questions,
        pictures,
        nextUp: [],
      };
      const db = await new Promise<IDBDatabase>((resolve, reject) => {
        const opening = indexedDB.open('plumbline');
        opening.onsuccess = () => resolve(opening.result);
        opening.onerror = () => reject(opening.error!);
      });
      const names = [...Object.keys(stores), 'settings'];
      await new Promise<void>((resolve, reject) => {
        const transaction = db.transaction(names, 'readwrite');
        transaction.oncomplete = () => resolve();
        transaction.onabort = () => reject(transaction.error!);
        for (const [name, all] of Object.entries(stores)) {
          const store = transaction.objectStore(name);
          store.clear();
          for (const row of all) store.put(row);
        }
        const settings = { courseId: rows.course.id, aimedTopicId: null, roundMinutes: 2 };
        transaction.objectStore('settings').put(settings, 'settings');
      });
      db.close();
      const channel = new BroadcastChannel('plumbline-changes');
      channel.postMessage({ stores: names });
      channel.close();
    },
    deck,
    MORNING,
  );
}
