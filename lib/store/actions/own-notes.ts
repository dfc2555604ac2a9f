import type { Clip } from '#lib/model/clip.ts';
import type { Db } from '../schema.ts';
import { writeStep } from '../steps.ts';
import { type ClipDraft, type PageDraft, keepSource, newClip, reachAim } from './clips.ts';

/**
 * Keeps notes of the student's own: a new source, and its clips in their order, all or none.
 *
 * @param page of kind 'own', its address a fresh `urn:uuid:`
 * @param at epoch milliseconds
 */
export async function keepOwnNotes(
  db: Db,
  drafts: readonly ClipDraft[],
  page: PageDraft,
  at: number,
): Promise<Clip[]> {
  const stores = ['clips', 'sources', 'pictures', 'settings'] as const;
  return writeStep(db, { name: 'addNotes', at }, stores, async (transaction) => {
    const source = await keepSource(transaction.objectStore('sources'), page, at);
    const clips: Clip[] = [];
    for (const [i, draft] of drafts.entries()) {
      // A millisecond apart, so that they stay in their order.
      const clip = await newClip(transaction, draft, source.id, at + i);
      await transaction.objectStore('clips').add(clip);
      clips.push(clip);
    }
    await reachAim(transaction);
    return clips;
  });
}
