import { Clip, NEW_CLIP } from '#lib/model/clip.ts';
import type { Picture } from '#lib/model/picture.ts';
import { Source } from '#lib/model/source.ts';
import { SETTINGS_KEY, Settings } from '#lib/model/settings.ts';
import type { StepName } from '#lib/model/step.ts';
import { StudentError } from '#lib/model/student-error.ts';
import type { Db } from '../schema.ts';
import { readBy } from '../read.ts';
import { writeStep } from '../steps.ts';
import { checked, write, type WriteTransaction } from '../write.ts';

/** What the slip hands over: the clip without its ids and times, and the page it is from. */
export type ClipDraft = Omit<
  Clip,
  'id' | 'sourceId' | 'pictureIds' | 'createdAt' | 'changedAt' | keyof typeof NEW_CLIP
> & {
  pictures: Pick<Picture, 'bytes' | 'type' | 'width' | 'height' | 'alt'>[];
};
export type PageDraft = Omit<Source, 'id' | 'createdAt' | 'changedAt'>;

/**
 * Keeps a clip and, where it is new, its source. A passage that this source already has in the course (`isSame`) is
 * changed instead of doubled. The topic that was aimed at is reached with it.
 */
export async function keepClip(
  db: Db,
  draft: ClipDraft,
  page: PageDraft,
  isSame: (clip: Clip) => boolean,
  at: number,
): Promise<Clip> {
  return write(db, ['clips', 'sources', 'pictures', 'settings'], async (transaction) => {
    const clips = transaction.objectStore('clips');
    const source = await keepSource(transaction.objectStore('sources'), page, at);
    const others = await clips.index('source').getAll(source.id);
    const twin = others.find((clip) => clip.courseId === draft.courseId && isSame(clip));
    const clip = twin ? changedTwin(twin, draft, at) : await newClip(transaction, draft, source.id, at);
    await clips.put(clip);
    await reachAim(transaction);
    return clip;
  });
}

type KeepTransaction = WriteTransaction<'clips' | 'sources' | 'pictures' | 'settings'>;

/** The topic that was aimed at is reached. Part of an action. */
export async function reachAim(transaction: KeepTransaction): Promise<void> {
  const settings = Settings.safeParse(await transaction.objectStore('settings').get(SETTINGS_KEY));
  if (settings.success && settings.data.aimedTopicId !== null)
    await transaction.objectStore('settings').put({ ...settings.data, aimedTopicId: null }, SETTINGS_KEY);
}

function changedTwin(twin: Clip, { topicIds, ownWords, unclear }: ClipDraft, at: number): Clip {
  return checked('clips', { ...twin, topicIds, ownWords, unclear, changedAt: at });
}

/** A new clip; its pictures are written with it. Part of an action. */
export async function newClip(
  transaction: KeepTransaction,
  { pictures, ...draft }: ClipDraft,
  sourceId: string,
  at: number,
): Promise<Clip> {
  const kept = () => ({ id: crypto.randomUUID(), createdAt: at, changedAt: at });
  const clip = { ...draft, ...kept(), sourceId, ...NEW_CLIP };
  const pictureIds: string[] = [];
  for (const picture of pictures) {
    const row = checked('pictures', { ...picture, ...kept(), courseId: draft.courseId, clipId: clip.id });
    pictureIds.push(row.id);
    await transaction.objectStore('pictures').add(row);
  }
  return checked('clips', { ...clip, pictureIds });
}

/** The source of an address, written where it is new. Part of an action. */
export async function keepSource(
  sources: ReturnType<WriteTransaction<'sources'>['objectStore']>,
  page: PageDraft,
  at: number,
): Promise<Source> {
  const known = Source.safeParse(await sources.index('url').get(page.url));
  if (known.success) return known.data;
  const source = checked('sources', {
    id: crypto.randomUUID(),
    createdAt: at,
    changedAt: at,
    ...page,
  });
  await sources.add(source);
  return source;
}

/** Changes what the student may change of a clip. */
export async function changeClip(
  db: Db,
  id: string,
  change: Partial<Pick<Clip, 'topicIds' | 'statementIds' | 'ownWords' | 'unclear' | 'leftOut' | 'cleared'>>,
  at: number,
): Promise<Clip> {
  const step = { name: nameOf(change), at, joins: change.ownWords === undefined ? '' : `ownWords ${id}` };
  return writeStep(db, step, ['clips'], async (transaction) => {
    const clip = Clip.safeParse(await transaction.objectStore('clips').get(id));
    if (!clip.success) throw new StudentError('errorClipGone');
    const changed = checked('clips', { ...clip.data, ...change, changedAt: at });
    await transaction.objectStore('clips').put(changed);
    return changed;
  });
}

/** What a change of a clip is called when it is offered to be undone. */
function nameOf({ ownWords, unclear, statementIds, leftOut }: Partial<Clip>): StepName {
  if (ownWords !== undefined) return 'changeOwnWords';
  if (unclear !== undefined) return unclear ? 'markUnclear' : 'clearUnclear';
  if (statementIds) return 'tickStatements';
  if (leftOut !== undefined) return leftOut ? 'leaveOut' : 'takeIn';
  return 'moveTopic';
}

/** The clips that were kept from an address, in a course or, without one, in all. */
export async function clipsFrom(db: Db, url: string, courseId?: string): Promise<Clip[]> {
  const sources = await readBy(db, 'sources', 'url', url);
  const clips = await Promise.all(sources.map((source) => readBy(db, 'clips', 'source', source.id)));
  return clips.flat().filter((clip) => courseId === undefined || clip.courseId === courseId);
}
