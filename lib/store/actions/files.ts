import { Source } from '#lib/model/source.ts';
import type { SourceFile } from '#lib/model/source-file.ts';
import { readBy } from '../read.ts';
import type { Db } from '../schema.ts';
import { checked, write } from '../write.ts';
import type { PageDraft } from './clips.ts';

/**
 * Keeps the file behind a source, and the source where it is new. A source has one file: another one takes its place.
 * Errors: StudentError `errorFieldWrong`, also when the file is too heavy.
 */
export async function keepFile(
  db: Db,
  page: PageDraft,
  file: Pick<SourceFile, 'name' | 'bytes'>,
  at: number,
): Promise<SourceFile> {
  return write(db, ['sources', 'files'], async (transaction) => {
    const kept = () => ({ id: crypto.randomUUID(), createdAt: at, changedAt: at });
    const known = Source.safeParse(await transaction.objectStore('sources').index('url').get(page.url));
    const source = known.success ? known.data : checked('sources', { ...page, ...kept() });
    if (!known.success) await transaction.objectStore('sources').add(source);
    const files = transaction.objectStore('files');
    for (const key of await files.index('source').getAllKeys(source.id)) await files.delete(key);
    const row = checked('files', { ...kept(), ...file, sourceId: source.id });
    await files.add(row);
    return row;
  });
}

/** Takes the file behind a source out of the deck; its clips stay. */
export async function dropFile(db: Db, sourceId: string): Promise<void> {
  await write(db, ['files'], async (transaction) => {
    const files = transaction.objectStore('files');
    for (const key of await files.index('source').getAllKeys(sourceId)) await files.delete(key);
  });
}

/** The file behind a source; undefined when none was kept. */
export async function fileOf(db: Db, sourceId: string): Promise<SourceFile | undefined> {
  return (await readBy(db, 'files', 'source', sourceId))[0];
}

/** The source known by an address or a file's name; undefined when nothing was kept from there. */
export async function sourceAt(db: Db, url: string): Promise<Source | undefined> {
  return (await readBy(db, 'sources', 'url', url))[0];
}

/** Which of the sources have their file in the deck. Reads no file. */
export async function sourcesWithFile(db: Db): Promise<Set<string>> {
  const found = new Set<string>();
  for (
    let row = await db.transaction('files').store.index('source').openKeyCursor();
    row;
    row = await row.continue()
  )
    found.add(row.key);
  return found;
}
