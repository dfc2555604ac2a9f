import type {
  Blockquote,
  BlockContent,
  Definition,
  List,
  ListItem,
  Paragraph,
  PhrasingContent,
  RootContent,
} from 'mdast';
import type { Line } from '#lib/model/item.ts';
import type { OutPicture, OutWords } from '../out/out-words.ts';
import { isOthers, provenanceParts } from '../out/provenance-parts.ts';
import { type OutClip, type OutSection, headingOf } from '../out/sections.ts';
import { writeMarkdown } from './dialect.ts';
import { EMPTY_LEAD, OWN_MARK } from './own-mark.ts';
import { phrasesOf } from './phrases.ts';
import { passageBlocks } from './write-passage.ts';

export interface MarkdownInput {
  title: string;
  sections: readonly OutSection[];
  words: OutWords;
  /** By id; pictures that are gone are not in it. */
  pictures: ReadonlyMap<string, OutPicture>;
}

/**
 * Notes, questions and clips as one Markdown file: topics are headings; lines are nested list items, the lead strong
 * and the rest behind it; formulas stand between dollar signs. Pictures stand at the end as data URLs, so that the file
 * is whole by itself and its text stays readable. `readNotes` reads the lines back without loss.
 *
 * @param doc any document of the window that the work is done in
 */
export function notesMarkdown({ title, sections, words, pictures }: MarkdownInput, doc: Document): string {
  const used = new Set<string>();
  const picture = (id: string): PhrasingContent | null => {
    const found = pictures.get(id);
    if (!found) return null;
    used.add(id);
    return { type: 'imageReference', identifier: id, label: id, referenceType: 'full', alt: found.alt };
  };
  const hasClips = sections.some(({ clips }) => clips.some(isOthers));
  const blocks: RootContent[] = [
    { type: 'html', value: OWN_MARK },
    heading(1, title),
    paragraph(phrasesOf(words.about)),
    ...(hasClips ? [paragraph(phrasesOf(words.studyNote))] : []),
  ];
  for (const { topic, level, lines, questions, clips } of sections) {
    blocks.push(heading(level + 1, topic ? headingOf(topic) : words.untagged));
    if (lines.length > 0) blocks.push(listOf(lines, picture));
    for (const { prompt, answer, marks } of questions)
      blocks.push(
        labelled(`${words.question} (${words.marks(marks)}):`, prompt),
        labelled(`${words.answer}:`, answer),
      );
    for (const clip of clips) blocks.push(...clipBlocks(clip, words, picture, doc));
  }
  return writeMarkdown({
    type: 'root',
    children: [...blocks, ...[...used].map((id) => definition(id, pictures))],
  });
}

type PictureOf = (id: string) => PhrasingContent | null;

const paragraph = (children: PhrasingContent[]): Paragraph => ({ type: 'paragraph', children });

const heading = (depth: number, text: string): RootContent => ({
  type: 'heading',
  depth: Math.min(depth, 6) as 1,
  children: phrasesOf(text.replace(/\s+/g, ' ').trim()),
});

const labelled = (label: string, text: string): Paragraph =>
  paragraph([{ type: 'strong', children: [{ type: 'text', value: label }] }, ...behind(phrasesOf(text))]);

/** Phrases behind something else on the line. */
function behind([first, ...others]: PhrasingContent[]): PhrasingContent[] {
  if (!first) return [];
  // In one with the words, since a space by itself could be taken for the end of a line.
  if (first.type === 'text') return [{ type: 'text', value: ` ${first.value}` }, ...others];
  return [{ type: 'text', value: ' ' }, first, ...others];
}

const definition = (id: string, pictures: MarkdownInput['pictures']): Definition => ({
  type: 'definition',
  identifier: id,
  label: id,
  url: pictures.get(id)!.address,
});

/** Lines as nested lists. A depth that is skipped is an item that holds nothing but a list. */
function listOf(lines: readonly Line[], picture: PictureOf): List {
  const top = emptyList();
  const open: List[] = [top];
  for (const line of lines) {
    open.length = Math.min(open.length, line.depth + 1);
    while (open.length <= line.depth) {
      const items = open.at(-1)!.children;
      const inner = emptyList();
      const host = items.at(-1);
      if (host) host.children.push(inner);
      else items.push(itemOf([inner]));
      open.push(inner);
    }
    open.at(-1)!.children.push(itemOf(lineBlocks(line, picture)));
  }
  return top;
}

const emptyList = (): List => ({ type: 'list', ordered: false, spread: false, children: [] });
const itemOf = (children: ListItem['children']): ListItem => ({ type: 'listItem', spread: false, children });

function lineBlocks({ lead, rest, pictureIds }: Line, picture: PictureOf): Paragraph[] {
  const first: PhrasingContent =
    lead === '' ? { type: 'text', value: EMPTY_LEAD } : { type: 'strong', children: phrasesOf(lead) };
  const pictures = pictureIds.map(picture).filter((one) => one !== null);
  return [
    paragraph([first, ...behind(phrasesOf(rest))]),
    ...(pictures.length > 0 ? [paragraph(apart(pictures))] : []),
  ];
}

/** Pictures in a paragraph, one below the other. */
const apart = (pictures: PhrasingContent[]): PhrasingContent[] =>
  pictures.flatMap((one, i) => (i > 0 ? [{ type: 'break' } as const, one] : [one]));

function clipBlocks(
  { clip, source }: OutClip,
  words: OutWords,
  picture: PictureOf,
  doc: Document,
): RootContent[] {
  const placed = new Set<number>();
  const passage = passageBlocks(
    clip.html,
    (number) => {
      placed.add(number);
      return clip.pictureIds[number] === undefined ? null : picture(clip.pictureIds[number]);
    },
    doc,
  );
  const loose = clip.pictureIds
    .filter((_, number) => !placed.has(number))
    .map(picture)
    .filter((one) => one !== null);
  if (loose.length > 0) passage.push(paragraph(apart(loose)));
  const quote: Blockquote = { type: 'blockquote', children: passage as BlockContent[] };
  return [
    ...(passage.length > 0 ? [quote] : []),
    ...(clip.ownWords.trim() === '' ? [] : [labelled(`${words.ownWords}:`, clip.ownWords.trim())]),
    ...(clip.unclear ? [paragraph([{ type: 'text', value: words.unclear }])] : []),
    paragraph(provenance({ clip, source }, words)),
  ];
}

/** Where a clip is from, with address and licence. */
function provenance(clip: OutClip, words: OutWords): PhrasingContent[] {
  const text = (value: string): PhrasingContent => ({ type: 'text', value });
  const parts = provenanceParts(clip, words).map((part): PhrasingContent =>
    part.url === undefined ? text(part.text) : { type: 'link', url: part.url, children: [text(part.text)] },
  );
  return [text(`${words.from}: `), ...parts.flatMap((part, i) => (i > 0 ? [text(' · '), part] : [part]))];
}
