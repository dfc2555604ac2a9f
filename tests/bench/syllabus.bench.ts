import { buildTopicIndex, suggestTopics, type TopicIndex } from '#lib/syllabus/match/index.ts';
import { readOutline } from '#lib/syllabus/read-outline.ts';
import { type Figure, figure } from './figure.ts';
import { SyllabusMaker } from './make-syllabus.ts';
import { qualityFigures } from './match/figures.ts';
import { inTurns, tookOnce } from './timing.ts';

const TOPICS = 500;
const CLIPS = 5000;
const WORDS_A_CLIP = 120;
const PASSAGES = 50;

/**
 * Times run in Node on made-up words, each held against the barest loop over the same texts or rows; how well the
 * match does is measured on labelled collections.
 */
export async function figures(): Promise<Figure[]> {
  return [...(await match()), ...qualityFigures(), await outline()];
}

async function match(): Promise<Figure[]> {
  const made = new SyllabusMaker(TOPICS);
  const tagged = made
    .clips(CLIPS, WORDS_A_CLIP)
    .map(({ topicIds, text }) => ({ topicId: topicIds[0]!, text }));
  const input = { topics: made.topics, statements: made.statements, tagged };
  const texts = [
    ...made.topics.map(({ title }) => title),
    ...[...made.statements, ...tagged].map((t) => t.text),
  ];
  const passages = Array.from({ length: PASSAGES }, () => ({
    text: made.text(150),
    headings: [made.text(4), made.text(3)],
    title: made.text(6),
  }));
  const index = buildTopicIndex(input);
  let turn = 0;
  const next = () => passages[turn++ % PASSAGES]!;
  const query = await inTurns(
    { repeats: 15, warmUp: 3 },
    () => tookOnce(() => suggestTopics(next(), index), PASSAGES),
    () => tookOnce(() => scan(texts, next().text)),
  );
  const building = await inTurns(
    { repeats: 5, warmUp: 1 },
    () => tookOnce(() => buildTopicIndex(input)),
    () => tookOnce(() => countWords(texts)),
  );
  const adding = await inTurns(
    { repeats: 15, warmUp: 3 },
    () => tookOnce(() => addAndAsk(index, tagged[turn++ % CLIPS]!), PASSAGES),
    () => tookOnce(() => countWords([tagged[turn++ % CLIPS]!.text]), PASSAGES),
  );
  return [
    figure({
      name: 'syllabus/match-ms',
      value: query.ours,
      unit: 'ms',
      against: { what: 'bare scan of the same texts for each word', value: query.other },
      goal: { atMost: 5 },
    }),
    figure({
      name: 'syllabus/match-index-ms',
      value: building.ours,
      unit: 'ms',
      against: { what: 'bare count of the words', value: building.other },
    }),
    figure({
      name: 'syllabus/match-add-one-ms',
      value: adding.ours,
      unit: 'ms',
      against: { what: 'bare count of its words', value: adding.other },
      goal: { atMost: 5 },
    }),
  ];
}

/** One more tagged clip, and the next match, which is where what was put off is made up for. */
function addAndAsk(index: TopicIndex, clip: { topicId: string; text: string }): unknown {
  index.tag(clip);
  return suggestTopics({ text: clip.text, headings: [], title: '' }, index);
}

/** How many of a passage's words each text holds. */
function scan(texts: readonly string[], passage: string): Uint16Array {
  const words = [...new Set(passage.split(' '))].filter((word) => word.length > 3);
  const hits = new Uint16Array(texts.length);
  for (const word of words) {
    for (let i = 0; i < texts.length; i++) if (texts[i]!.includes(word)) hits[i]! += 1;
  }
  return hits;
}

function countWords(texts: readonly string[]): Map<string, number> {
  const counts = new Map<string, number>();
  for (const text of texts) {
    for (const word of text.split(' ')) counts.set(word, (counts.get(word) ?? 0) + 1);
  }
  return counts;
}

async function outline(): Promise<Figure> {
  const text = new SyllabusMaker(1).outline(2000);
  const { ours, other } = await inTurns(
    { repeats: 25, warmUp: 5 },
    () => tookOnce(() => readOutline(text)),
    () => tookOnce(() => text.split('\n'), 20),
  );
  return figure({
    name: 'syllabus/outline-2000-lines-ms',
    value: ours,
    unit: 'ms',
    against: { what: 'bare split into lines', value: other },
  });
}
