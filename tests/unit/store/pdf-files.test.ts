import { expect, test } from 'vitest';
import { keepClip } from '#lib/store/actions/clips.ts';
import { dropFile, fileOf, keepFile, sourceAt, sourcesWithFile } from '#lib/store/actions/files.ts';
import { HEAVIEST_FILE } from '#lib/model/source-file.ts';
import { MORNING, aClip } from '../builders.ts';
import { freshDeck } from './fresh-deck.ts';

const PAGE = {
  kind: 'pdf' as const,
  url: `ni:///sha-256;${'A'.repeat(43)}`,
  title: 'Waves',
  site: '',
  author: '',
  published: '',
  licence: '' as const,
};
const bytes = (text: string) => new Blob([text], { type: 'application/pdf' });

test('a file is kept with its source, and another takes its place', async () => {
  const db = await freshDeck();
  const first = await keepFile(db, PAGE, { name: 'waves.pdf', bytes: bytes('one') }, MORNING);
  const second = await keepFile(db, PAGE, { name: 'waves 2.pdf', bytes: bytes('two!') }, MORNING + 1);
  expect(second.sourceId).toBe(first.sourceId);
  expect(await db.count('sources')).toBe(1);
  expect(await db.count('files')).toBe(1);
  const kept = await fileOf(db, first.sourceId);
  expect(kept).toMatchObject({ name: 'waves 2.pdf', createdAt: MORNING + 1 });
  expect(kept!.bytes.size).toBe(4);
  expect((await sourceAt(db, PAGE.url))?.title).toBe('Waves');
  expect(await sourcesWithFile(db)).toEqual(new Set([first.sourceId]));
});

test('the file goes, the source and its clips stay', async () => {
  const db = await freshDeck();
  const { id: _id, sourceId: _source, createdAt: _c, changedAt: _d, pictureIds: _p, ...draft } = aClip();
  const clip = await keepClip(db, { ...draft, pictures: [] }, PAGE, () => false, MORNING);
  const file = await keepFile(db, PAGE, { name: 'waves.pdf', bytes: bytes('one') }, MORNING);
  expect(file.sourceId).toBe(clip.sourceId);
  await dropFile(db, clip.sourceId);
  expect(await fileOf(db, clip.sourceId)).toBeUndefined();
  expect([await db.count('sources'), await db.count('clips')]).toEqual([1, 1]);
  expect((await sourcesWithFile(db)).size).toBe(0);
});

test('a file that is too heavy is refused, and no source stays behind', async () => {
  const db = await freshDeck();
  const heavy = Object.defineProperty(bytes(''), 'size', { value: HEAVIEST_FILE + 1 });
  await expect(keepFile(db, PAGE, { name: 'x.pdf', bytes: heavy }, MORNING)).rejects.toMatchObject({
    message: 'errorFieldWrong',
  });
  expect([await db.count('sources'), await db.count('files')]).toEqual([0, 0]);
});
