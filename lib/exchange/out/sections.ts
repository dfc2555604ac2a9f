import type { Clip } from '#lib/model/clip.ts';
import type { Course } from '#lib/model/course.ts';
import type { Line, Question } from '#lib/model/item.ts';
import type { Source } from '#lib/model/source.ts';
import type { Topic } from '#lib/model/topic.ts';
import { splitTex } from '#lib/notes/split-tex.ts';
import { type TopicNode, activeTopics, topicTree } from '#lib/syllabus/tree.ts';

/** What of a deck can go out. */
export interface OutRows {
  course: Course;
  topics: readonly Topic[];
  lines: readonly Line[];
  questions: readonly Question[];
  clips: readonly Clip[];
  sources: readonly Source[];
}

export interface OutChoice {
  notes: boolean;
  questions: boolean;
  clips: boolean;
}

export interface OutClip {
  clip: Clip;
  /** Null where the deck no longer has it. */
  source: Source | null;
}

/** A topic with what goes out under it. */
export interface OutSection {
  /** Null for clips without a topic. */
  topic: Topic | null;
  /** 1 at the top of the syllabus. */
  level: number;
  /** In the order of the notes. */
  lines: Line[];
  questions: Question[];
  clips: OutClip[];
}

/** A topic as its heading reads. */
export const headingOf = ({ code, title }: Pick<Topic, 'code' | 'title'>): string =>
  `${code} ${title}`.replace(/\s+/g, ' ').trim();

/** What two headings have in common that name the same topic, whichever delimiters their formulas have. */
export const headingKey = (heading: string): string =>
  JSON.stringify(
    splitTex(heading.trim().normalize('NFC').toLowerCase()).map((piece) =>
      piece.kind === 'words'
        ? piece.text.replace(/\s+/g, ' ')
        : [piece.tex.replace(/\s+/g, ' '), piece.display],
    ),
  );

/**
 * What goes out, topic by topic in reading order: topics that count, with what stands under them, and the topics above
 * them. Lines and clips that are left out of the notes stay out. A clip under several topics goes with the first of
 * them. A topic that is headed like one with content has its heading too, so that the headings can be told apart.
 */
export function sectionsOf(rows: OutRows, choice: OutChoice): OutSection[] {
  const topics = activeTopics(rows.topics);
  const order = new Map(topics.map(({ id }, i) => [id, i]));
  const lines = Map.groupBy(choice.notes ? rows.lines.filter(isIn) : [], ({ topicId }) => topicId);
  const questions = Map.groupBy(choice.questions ? rows.questions : [], ({ topicId }) => topicId);
  const clips = Map.groupBy(clipsOut(rows, choice), ({ clip }) => firstTopic(clip, order));
  const content = (topic: Topic | null): Omit<OutSection, 'level'> => ({
    topic,
    lines: [...(lines.get(topic?.id ?? '') ?? [])].sort((a, b) => a.order - b.order),
    questions: questions.get(topic?.id ?? '') ?? [],
    clips: clips.get(topic?.id ?? null) ?? [],
  });
  const filled = new Set(topics.filter((topic) => hasContent(content(topic))).map(keyOf));
  const walk = (nodes: readonly TopicNode[], level: number): OutSection[] =>
    nodes.flatMap(({ topic, children }) => {
      const below = walk(children, level + 1);
      const own = { level, ...content(topic) };
      return below.length > 0 || filled.has(keyOf(topic)) ? [own, ...below] : [];
    });
  const untagged = { level: 1, ...content(null) };
  return [...walk(topicTree(topics), 1), ...(hasContent(untagged) ? [untagged] : [])];
}

const keyOf = (topic: Topic): string => headingKey(headingOf(topic));

const isIn = ({ leftOut }: { leftOut: unknown }): boolean => leftOut === null;

const hasContent = ({ lines, questions, clips }: Omit<OutSection, 'level'>): boolean =>
  lines.length + questions.length + clips.length > 0;

function clipsOut({ clips, sources }: OutRows, choice: OutChoice): OutClip[] {
  if (!choice.clips) return [];
  const byId = new Map(sources.map((source) => [source.id, source]));
  return clips.filter(isIn).map((clip) => ({ clip, source: byId.get(clip.sourceId) ?? null }));
}

/** The first of a clip's topics in reading order; null where none counts. */
function firstTopic({ topicIds }: Clip, order: ReadonlyMap<string, number>): string | null {
  const known = topicIds.filter((id) => order.has(id));
  return known.sort((a, b) => order.get(a)! - order.get(b)!)[0] ?? null;
}
