import type { Attempt } from '#lib/model/attempt.ts';
import { NextUp } from '#lib/model/next-up.ts';
import type { Db } from '../schema.ts';
import { type WriteTransaction, checked, write } from '../write.ts';

/** Records one attempt, for good. Its item leaves the cache of what comes next: it has had its turn. */
export async function recordAttempt(db: Db, attempt: Attempt): Promise<void> {
  const work = async (transaction: WriteTransaction<'attempts' | 'nextUp'>) => {
    await transaction.objectStore('attempts').add(checked('attempts', attempt));
    const nextUp = NextUp.safeParse(await transaction.objectStore('nextUp').get(attempt.courseId));
    if (!nextUp.success) return;
    const items = nextUp.data.items.filter((item) => item.id !== attempt.itemId);
    await transaction.objectStore('nextUp').put({ ...nextUp.data, items });
  };
  await write(db, ['attempts', 'nextUp'], work, attempt);
}

/** Keeps what gains most now, for the popup's next opening. */
export async function cacheNextUp(db: Db, nextUp: NextUp): Promise<void> {
  // A cache need not survive a power cut, and nobody has to be told of it.
  const transaction = db.transaction('nextUp', 'readwrite', { durability: 'relaxed' });
  await Promise.all([transaction.store.put(checked('nextUp', nextUp)), transaction.done]);
}
