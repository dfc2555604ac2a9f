import type { OutPicture } from '#lib/exchange/out/out-words.ts';
import { type OutChoice, type OutSection, sectionsOf } from '#lib/exchange/out/sections.ts';
import { fileName } from '#lib/exchange/file-name.ts';
import type { CourseDeck } from '#lib/store/course-deck.ts';
import { readOne } from '#lib/store/read.ts';
import type { Db } from '#lib/store/schema.ts';
import { browser } from 'wxt/browser';
import { dataUrlOf } from '../../parts/data-url.ts';
import { t } from '../../text.ts';
import { outWords } from './out-words.ts';

export const OUT_FORMATS = ['html', 'markdown', 'annotations'] as const;
export type OutFormat = (typeof OUT_FORMATS)[number];

export interface OutFile {
  name: string;
  type: string;
  text: string;
}

/** What of the choice a format can hold: annotations are about clips. */
export const choiceFor = (format: OutFormat, choice: OutChoice): OutChoice =>
  format === 'annotations' ? { notes: false, questions: false, clips: true } : choice;

/** Makes the file. The writers are loaded when they are needed: most visits to the desk need none. */
export async function makeFile(
  db: Db,
  deck: CourseDeck,
  format: OutFormat,
  choice: OutChoice,
  now: number,
): Promise<OutFile> {
  const title = deck.course.name;
  const sections = sectionsOf(deck, choiceFor(format, choice));
  const pictures = await picturesIn(db, sections);
  const words = outWords(now);
  if (format === 'markdown') {
    const { notesMarkdown } = await import('#lib/exchange/markdown/write-notes.ts');
    const text = notesMarkdown({ title, sections, words, pictures }, document);
    return { name: fileName(title, t('outFileNotes'), 'md'), type: 'text/markdown', text };
  }
  if (format === 'html') {
    const { notesPage } = await import('#lib/exchange/out/notes-page.ts');
    const language = browser.i18n.getUILanguage();
    const text = notesPage({ title, sections, words, pictures, language }, document);
    return { name: fileName(title, t('outFileNotes'), 'html'), type: 'text/html', text };
  }
  const { webAnnotations } = await import('#lib/exchange/out/web-annotations.ts');
  const collection = webAnnotations({
    label: title,
    id: crypto.randomUUID(),
    sections,
    unclear: t('unclear'),
    pictures,
    savedAt: now,
    timeOf: (at) => new Date(at).toISOString(),
  });
  const text = JSON.stringify(collection, null, 1);
  return { name: fileName(title, t('outFileClips'), 'jsonld'), type: 'application/ld+json', text };
}

/** The pictures of all lines and clips that go out, as data URLs. */
async function picturesIn(db: Db, sections: readonly OutSection[]): Promise<Map<string, OutPicture>> {
  const ids = sections.flatMap(({ lines, clips }) => [
    ...lines.flatMap(({ pictureIds }) => pictureIds),
    ...clips.flatMap(({ clip }) => clip.pictureIds),
  ]);
  const found = new Map<string, OutPicture>();
  for (const id of new Set(ids)) {
    const picture = await readOne(db, 'pictures', id);
    if (!picture) continue;
    const { alt, width, height, bytes } = picture;
    found.set(id, { alt, width, height, address: await dataUrlOf(bytes) });
  }
  return found;
}
