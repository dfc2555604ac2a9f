import type { List, ListItem, Nodes, Paragraph, RootContent } from 'mdast';
import { DEEPEST_LINE } from '#lib/model/item.ts';
import { StudentError } from '#lib/model/student-error.ts';
import type { Topic } from '#lib/model/topic.ts';
import { formulaRanges } from '#lib/notes/split-tex.ts';
import { parseMarkdown } from './dialect.ts';
import { EMPTY_LEAD, OWN_MARK } from './own-mark.ts';
import { textOf } from './phrases.ts';
import { topicFinder } from './topic-finder.ts';

/** A line of notes as a file has it. */
export interface ReadLine {
  lead: string;
  rest: string;
  depth: number;
  /** Pictures of the deck that stand below it, by id; those of other files do not come along. */
  pictureIds: string[];
}

/** The lines under one heading. */
export interface ReadPart {
  /** Empty for lines above the first heading. */
  heading: string;
  /** The topic that is called so; null where there is none. */
  topicId: string | null;
  lines: ReadLine[];
}

export interface NotesReading {
  /** In the order of the file; only those with lines. */
  parts: ReadPart[];
  /** How many paragraphs, tables and the like are no list, and so no lines. */
  others: number;
}

/** The longest lead or rest, as lib/model/item.ts has it. */
const LONGEST_TEXT = 20_000;

/** A lead before a colon or a dash is no longer than this in notes from elsewhere. */
const LONGEST_LEAD = 80;

/**
 * Reads Markdown as note lines: headings lead to the topics that are called so, list items become lines. In a file that
 * Plumbline wrote each line is as it was. In any other, what is strong at the start of an item, or stands before a
 * colon or a dash, becomes the lead.
 * Errors: StudentError `errorNotesNone` where there is no list item, `errorNotesLineLong`.
 */
export function readNotes(file: string, topics: readonly Topic[]): NotesReading {
  const source = withoutBytes(file);
  const isOwn = source.replace(/^\ufeff/, '').startsWith(OWN_MARK);
  const find = topicFinder(topics);
  const parts: ReadPart[] = [];
  let part: ReadPart = { heading: '', topicId: null, lines: [] };
  let others = 0;
  for (const block of parseMarkdown(source).children) {
    if (block.type === 'heading') {
      const text = textOf(block.children, source);
      // The title of a file of ours is the course's, which a topic may be called as well.
      const isTitle = isOwn && block.depth === 1;
      const topicId = isTitle ? null : find(block.depth, text);
      part = { heading: text.replace(/\s+/g, ' ').trim(), topicId, lines: [] };
    } else if (block.type === 'list') {
      if (part.lines.length === 0) parts.push(part);
      part.lines.push(...linesOf(block, 0, { source, isOwn }));
    } else if (!isOwn && !isSilent(block)) others++;
  }
  const lines = parts.flatMap((one) => one.lines);
  if (lines.length === 0) throw new StudentError('errorNotesNone');
  for (const { lead, rest } of lines) {
    const length = Math.max(lead.length, rest.length);
    if (length > LONGEST_TEXT) throw new StudentError('errorNotesLineLong', length, LONGEST_TEXT);
  }
  return { parts, others };
}

/** Without the bytes of pictures: they are known by their names, and megabytes of them take the reader half a minute. */
const withoutBytes = (text: string): string =>
  text.replace(/((?:^\[[^\]\n]+\]: |\]\()data:image\/[\w.+-]+;base64,)[\w+/=]+/gm, '$1');

/** Blocks that say nothing. */
const isSilent = ({ type }: RootContent): boolean =>
  type === 'html' || type === 'thematicBreak' || type === 'definition';

interface Reading {
  source: string;
  isOwn: boolean;
}

function linesOf(list: List, depth: number, reading: Reading): ReadLine[] {
  return list.children.flatMap((item) => itemLines(item, depth, reading));
}

function itemLines(item: ListItem, depth: number, reading: Reading): ReadLine[] {
  const below: ReadLine[] = [];
  const own: Nodes[] = [];
  const pictureIds: string[] = [];
  for (const block of item.children) {
    if (block.type === 'list') below.push(...linesOf(block, depth + 1, reading));
    else if (reading.isOwn && isPictures(block)) pictureIds.push(...picturesIn(block));
    else own.push(block);
  }
  if (own.length === 0) return below;
  const line = reading.isOwn ? ownLine(own, reading.source) : otherLine(own, reading.source);
  const isSaid = reading.isOwn || line.lead !== '' || line.rest !== '';
  return [...(isSaid ? [{ ...line, depth: Math.min(depth, DEEPEST_LINE), pictureIds }] : []), ...below];
}

/** A paragraph that is nothing but pictures. */
const isPictures = (block: Nodes): block is Paragraph =>
  block.type === 'paragraph' &&
  block.children.every(({ type }) => type === 'imageReference' || type === 'break') &&
  block.children.length > 0;

const picturesIn = ({ children }: Paragraph): string[] =>
  children.flatMap((node) => (node.type === 'imageReference' ? [node.identifier] : []));

type LineText = Pick<ReadLine, 'lead' | 'rest'>;

function ownLine(blocks: readonly Nodes[], source: string): LineText {
  const [first, ...others] = blocks.flatMap((block) => ('children' in block ? block.children : [block]));
  if (first?.type === 'strong')
    return { lead: textOf(first.children, source), rest: textOf(others, source).slice(1) };
  const text = textOf([first!, ...others], source);
  return { lead: '', rest: text.slice(EMPTY_LEAD.length + 1) };
}

function otherLine(blocks: readonly Nodes[], source: string): LineText {
  const [first] = blocks;
  const text = blocks
    .map((block) => textOf([block], source).trim())
    .filter(Boolean)
    .join('\n');
  const strong = first?.type === 'paragraph' ? first.children[0] : undefined;
  if (strong?.type === 'strong') {
    const said = textOf(strong.children, source).trim();
    if (said !== '' && text.startsWith(said))
      return { lead: bare(said), rest: text.slice(said.length).replace(/^\s*[:\u2013\u2014-]?\s*/, '') };
  }
  const cut = cutOf(text);
  return cut
    ? { lead: text.slice(0, cut.from).trim(), rest: text.slice(cut.to).trim() }
    : { lead: text, rest: '' };
}

/** Without the colon that leads on to the rest. */
const bare = (lead: string): string => lead.replace(/\s*:$/, '');

/** Where a lead ends: at the first colon or dash that is in no formula. */
function cutOf(text: string): { from: number; to: number } | null {
  const formulas = formulaRanges(text);
  for (const match of text.matchAll(/:\s+| [\u2013\u2014-] /g)) {
    if (match.index > LONGEST_LEAD) return null;
    const inFormula = formulas.some(({ from, to }) => match.index >= from && match.index < to);
    if (!inFormula && match.index > 0) return { from: match.index, to: match.index + match[0].length };
  }
  return null;
}
