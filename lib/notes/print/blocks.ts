import type { Line, Question } from '#lib/model/item.ts';
import type { Picture } from '#lib/model/picture.ts';
import type { Topic } from '#lib/model/topic.ts';
import { activeTopics, pathOf, byIdOf } from '#lib/syllabus/tree.ts';

/** What is printed, piece by piece. */
export type PrintBlock = TopicBlock | LineBlock | PictureBlock | CardBlock;

interface Block {
  /** The id of the topic, line or question; pictures have their line's before their own. */
  id: string;
  topicId: string;
}

/** The heading of a topic; level 0 at the top of the tree. */
export interface TopicBlock extends Block, Pick<Topic, 'code' | 'title'> {
  kind: 'topic';
  level: number;
}

/** A line of the notes. */
export interface LineBlock extends Block, Pick<Line, 'lead' | 'rest' | 'depth'> {
  kind: 'line';
}

/** A diagram below a line. */
export interface PictureBlock extends Block, Pick<Line, 'depth'>, PrintPicture {
  kind: 'picture';
  pictureId: string;
}

/** A question, to have its answer behind it. */
export interface CardBlock extends Block, Pick<Question, 'prompt' | 'answer' | 'marks'> {
  kind: 'card';
  /** Its number on the sheets, from 1: the same on the front and on the back. */
  number: number;
  topic: Pick<Topic, 'code' | 'title'>;
}

export type PrintPicture = Pick<Picture, 'width' | 'height' | 'alt'>;

/** A line as it is printed. */
export const lineBlock = ({ id, topicId, lead, rest, depth }: Omit<LineBlock, 'kind'>): LineBlock => ({
  kind: 'line',
  id,
  topicId,
  lead,
  rest,
  depth,
});

/** Whether a line is in the printed notes: not left out, and with something in it. */
export const isPrinted = ({ lead, rest, leftOut, pictureIds }: Line): boolean =>
  leftOut === null && (lead !== '' || rest !== '' || pictureIds.length > 0);

/**
 * The notes of a course as they are printed: topics in reading order, each with its lines and their diagrams. A topic's
 * heading is printed where something is printed below it; topics that are off are not, nor are diagrams that are gone.
 *
 * @param lines in any order
 * @param pictures those of the lines, by id
 */
export function noteBlocks(
  topics: readonly Topic[],
  lines: readonly Line[],
  pictures: ReadonlyMap<string, PrintPicture> = new Map(),
): PrintBlock[] {
  const printed = lines.filter(isPrinted).sort((a, b) => a.order - b.order);
  const byTopic = Map.groupBy(printed, ({ topicId }) => topicId);
  return withHeadings(topics, (topic) =>
    (byTopic.get(topic.id) ?? []).flatMap((line) => [
      ...(line.lead !== '' || line.rest !== '' ? [lineBlock(line)] : []),
      ...pictureBlocks(line, pictures),
    ]),
  );
}

function pictureBlocks(line: Line, pictures: ReadonlyMap<string, PrintPicture>): PictureBlock[] {
  const { topicId, depth } = line;
  return line.pictureIds.flatMap((pictureId, place) => {
    const picture = pictures.get(pictureId);
    if (!picture) return [];
    const { width, height, alt } = picture;
    // A line may hold one diagram twice.
    const id = `${line.id} ${place} ${pictureId}`;
    return [{ kind: 'picture', id, topicId, depth, pictureId, width, height, alt }];
  });
}

/** The questions of a course as they are printed, by topics in reading order. Those of topics that are off are not. */
export function questionBlocks(topics: readonly Topic[], questions: readonly Question[]): CardBlock[] {
  const byTopic = Map.groupBy(questions, ({ topicId }) => topicId);
  const inOrder = activeTopics(topics).flatMap((topic) =>
    (byTopic.get(topic.id) ?? []).map((question) => ({ topic, question })),
  );
  return inOrder.map(({ topic, question: { id, topicId, prompt, answer, marks } }, index) => {
    const { code, title } = topic;
    return { kind: 'card', id, topicId, number: index + 1, topic: { code, title }, prompt, answer, marks };
  });
}

/** The blocks of every topic that has some, below the headings that lead to it. */
function withHeadings(topics: readonly Topic[], blocksOf: (topic: Topic) => PrintBlock[]): PrintBlock[] {
  const byId = byIdOf(topics);
  const headed = new Set<string>();
  return activeTopics(topics).flatMap((topic) => {
    const blocks = blocksOf(topic);
    if (blocks.length === 0) return [];
    const headings = pathOf(topic, byId).flatMap(({ id, code, title }, level): PrintBlock[] => {
      if (headed.has(id)) return [];
      headed.add(id);
      return [{ kind: 'topic', id, topicId: id, level, code, title }];
    });
    return [...headings, ...blocks];
  });
}

/** Whether a block does not end a column while `next` follows it: a heading, or a line with its diagram. */
export function keepsNext(block: PrintBlock, next: PrintBlock | undefined): boolean {
  if (block.kind === 'topic') return true;
  if (block.kind !== 'line' || next?.topicId !== block.topicId) return false;
  if (next.kind === 'picture') return true;
  return block.rest === '' && next.kind === 'line' && next.depth > block.depth;
}

/** Space above a block, in CSS pixels. */
export function gapAbove(block: PrintBlock, before: PrintBlock | undefined): number {
  switch (block.kind) {
    case 'topic':
      if (before?.kind === 'topic') return 2;
      return block.level === 0 ? 14 : 8;
    case 'line':
      return block.depth === 0 ? 3 : 1;
    case 'picture':
      return 4;
    case 'card':
      return 0;
  }
}
