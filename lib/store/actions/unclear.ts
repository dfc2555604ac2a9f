import { Clip } from '#lib/model/clip.ts';
import type { Cleared } from '#lib/model/cleared.ts';
import { StudentError } from '#lib/model/student-error.ts';
import { Topic } from '#lib/model/topic.ts';
import { writeStep } from '../steps.ts';
import type { Db } from '../schema.ts';
import { checked } from '../write.ts';

/** Something that can be unclear. */
export interface UnclearPlace {
  store: 'clips' | 'topics';
  id: string;
}

/** Marks a clip or topic as one that the student must return to. `at` in epoch ms. */
export async function markUnclear(db: Db, place: UnclearPlace, at: number): Promise<void> {
  await change(db, place, 'markUnclear', at, []);
}

/** Takes the mark away, and keeps what cleared it. `at` in epoch ms. */
export async function clearUnclear(
  db: Db,
  place: UnclearPlace,
  by: Omit<Cleared, 'at'>,
  at: number,
): Promise<void> {
  await change(db, place, 'clearUnclear', at, [{ ...by, at }]);
}

async function change(
  db: Db,
  { store, id }: UnclearPlace,
  name: 'markUnclear' | 'clearUnclear',
  at: number,
  more: Cleared[],
): Promise<void> {
  await writeStep(db, { name, at }, [store], async (transaction) => {
    const row = await transaction.objectStore(store).get(id);
    const known = store === 'clips' ? Clip.safeParse(row).data : Topic.safeParse(row).data;
    if (!known) throw new StudentError(store === 'clips' ? 'errorClipGone' : 'errorTopicGone');
    const cleared = [...known.cleared, ...more].slice(-100);
    const unclear = name === 'markUnclear';
    await transaction
      .objectStore(store)
      .put(checked(store, { ...known, unclear, cleared, changedAt: at } as never));
  });
}
