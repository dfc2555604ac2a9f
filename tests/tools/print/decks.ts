import type { Course } from '#lib/model/course.ts';
import { DEEPEST_LINE, type Line, type Question } from '#lib/model/item.ts';
import type { Topic } from '#lib/model/topic.ts';
import { Random } from '#tests/bench/random.ts';
import { Words } from '#tests/bench/words.ts';
import { aCourse, aLine, aQuestion, aTopic } from '#tests/unit/builders.ts';

/** A course to be printed. The pictures are drawn where it is put. */
export interface PrintDeck {
  course: Course;
  topics: Topic[];
  lines: Line[];
  questions: Question[];
  pictures: { id: string; width: number; height: number; alt: string }[];
}

type Text = (random: Random, words: Words) => { lead: string; rest: string };

const FORMULAS = [
  String.raw`\(c = \sqrt{g h}\)`,
  String.raw`\(\omega^2 = g k \tanh k h\)`,
  String.raw`$p = p_0 + \rho g z$`,
  String.raw`\(\frac{\partial u}{\partial t} - f v = -\frac{1}{\rho}\frac{\partial p}{\partial x}\)`,
  String.raw`\(f = 2 \Omega \sin\varphi\)`,
  String.raw`\[T = 2\pi\sqrt{\frac{L}{g}}\]`,
  String.raw`\(x^{y^{z^{w^{v}}}}\)`,
];
const TOO_LARGE = [
  String.raw`\[\begin{pmatrix} ${'1 \\\\ '.repeat(70)} 1 \end{pmatrix}\]`,
  String.raw`\(a ${'+ b_{17} + c^{23} '.repeat(40)}\)`,
];
const BROKEN = [
  String.raw`\(\frac{1\)`,
  String.raw`$\notacommand{x}$`,
  'costs $5 and $6',
  'an open \\( bracket',
];
const SIGNS = [
  '🌊🌙 tides 🧭',
  'naïve Ångström façade',
  'موج البحر طويل',
  '潮汐和波浪的周期',
  'e\u0301tale',
  '‘quoted’ — “so”',
];

const plain: Text = (random, words) => ({
  lead: words.text(1 + random.below(4)),
  rest: words.text(3 + random.below(28)),
});
const short: Text = (random, words) => ({ lead: words.text(1), rest: words.text(1 + random.below(4)) });
const heading: Text = (random, words) => ({ lead: words.text(1 + random.below(5)), rest: '' });
const paragraph: Text = (random, words) => ({
  lead: words.text(2),
  rest: words.text(80 + random.below(120)),
});
const maths: Text = (random, words) => ({
  lead: random.next() < 0.2 ? random.pick(FORMULAS) : words.text(2),
  rest: `${words.text(1 + random.below(12))} ${random.pick(FORMULAS)} ${words.text(random.below(8) + 1)} ${random.pick(FORMULAS)}`,
});
const longMaths: Text = (random, words) => ({
  lead: words.text(2),
  rest: Array.from({ length: 15 }, () => `${words.text(1 + random.below(9))} ${random.pick(FORMULAS)}`).join(
    ' ',
  ),
});
const tooLarge: Text = (random, words) => ({
  lead: words.text(2),
  rest: `${words.text(4)} ${random.pick(TOO_LARGE)}`,
});
const broken: Text = (random, words) => ({
  lead: words.text(2),
  rest: `${words.text(4)} ${random.pick(BROKEN)}`,
});
const signs: Text = (random, words) => ({
  lead: random.pick(SIGNS),
  rest: `${words.text(5)} ${random.pick(SIGNS)}`,
});
const listed: Text = (random, words) => ({
  lead: words.text(2),
  rest: Array.from({ length: 2 + random.below(12) }, () => words.text(1 + random.below(6))).join('\n'),
});
const unbroken: Text = (random) => ({ lead: 'x', rest: 'wave'.repeat(20 + random.below(200)) });
const restOnly: Text = (random, words) => ({ lead: '', rest: words.text(1 + random.below(20)) });
const longest: Text = (_random, words) => ({
  lead: words.text(3),
  rest: words.text(4000).slice(0, 20_000).trim(),
});

interface Kind {
  name: string;
  topics: number;
  lines: number;
  texts: Text[];
  /** How often a line has a diagram. */
  pictured?: number;
  flat?: boolean;
}

const KINDS: Kind[] = [
  { name: 'one line', topics: 1, lines: 1, texts: [plain] },
  { name: 'short lines', topics: 12, lines: 400, texts: [short] },
  { name: 'as usual', topics: 20, lines: 400, texts: [plain, plain, plain, heading, maths] },
  { name: 'full of maths', topics: 10, lines: 80, texts: [maths] },
  { name: 'pictures', topics: 8, lines: 60, texts: [plain, heading], pictured: 0.4 },
  { name: 'paragraphs', topics: 6, lines: 40, texts: [paragraph, plain, longMaths] },
  { name: 'the longest line', topics: 2, lines: 3, texts: [longest, plain] },
  { name: 'formulas too large', topics: 3, lines: 12, texts: [tooLarge, plain, broken] },
  { name: 'signs of many scripts', topics: 6, lines: 90, texts: [signs, restOnly, listed] },
  { name: 'lists and long words', topics: 5, lines: 50, texts: [listed, unbroken, heading, restOnly] },
  { name: 'many topics', topics: 150, lines: 160, texts: [short, plain] },
  { name: 'no depth', topics: 15, lines: 250, texts: [plain], flat: true },
  {
    name: 'everything',
    topics: 25,
    lines: 140,
    texts: [plain, short, heading, paragraph, maths, longMaths, signs, listed, unbroken, restOnly, broken],
    pictured: 0.08,
  },
  { name: 'headings', topics: 40, lines: 200, texts: [heading, heading, plain] },
];

/** How many kinds of decks there are. */
export const KIND_COUNT = KINDS.length;

/** A deck of some kind, the same for the same seed. Seeds that leave the same rest by KIND_COUNT give the same kind. */
export function printDeck(seed: number): PrintDeck {
  const random = new Random(1000 + seed);
  const words = new Words(random, 800);
  const kind = KINDS[seed % KIND_COUNT]!;
  const columns = (random.below(2) + 1) as 1 | 2;
  const course = aCourse({ id: random.id(), name: `Foundation Oceanography ${seed}: ${kind.name}`, columns });
  const deck: PrintDeck = { course, topics: [], lines: [], questions: [], pictures: [] };
  const courseId = course.id;
  for (let order = 0; order < kind.topics; order++) deck.topics.push(topicOf(deck, random, words, order));
  for (let order = 0; order < kind.lines; order++) {
    const topic = deck.topics[Math.floor((order * kind.topics) / kind.lines)]!;
    const { lead, rest } = random.pick(kind.texts)(random, words);
    const depth = kind.flat ? 0 : Math.max(0, random.below(DEEPEST_LINE + 4) - 3);
    const pictureIds = random.next() < (kind.pictured ?? 0) ? [pictureOf(deck, random, words)] : [];
    const leftOut = random.next() < 0.05 && kind.lines > 1 ? 'known' : null;
    deck.lines.push(
      aLine({ id: random.id(), courseId, topicId: topic.id, lead, rest, order, depth, pictureIds, leftOut }),
    );
  }
  for (let i = 0; i < Math.ceil(kind.lines / 4); i++) {
    const asked = random.pick(kind.texts)(random, words);
    const answered = random.pick(kind.texts)(random, words);
    const prompt = (asked.rest || asked.lead).slice(0, 4000).trim();
    const answer = (answered.rest || answered.lead).trim();
    const topicId = random.pick(deck.topics).id;
    deck.questions.push(
      aQuestion({ id: random.id(), courseId, topicId, prompt, answer, marks: 1 + random.below(6) }),
    );
  }
  return deck;
}

function topicOf({ course, topics }: PrintDeck, random: Random, words: Words, order: number): Topic {
  // Mostly below one of the last topics, so that trees are deep.
  const above =
    order === 0 || random.next() < 0.3 ? undefined : topics[order - 1 - random.below(Math.min(order, 3))];
  const title = words.text(1 + random.below(random.next() < 0.1 ? 25 : 5));
  const parentId = above?.id ?? null;
  const off = order > 0 && random.next() < 0.04;
  return aTopic({
    id: random.id(),
    courseId: course.id,
    parentId,
    order,
    code: random.next() < 0.8 ? `${order + 1}.${random.below(9)}` : '',
    title,
    off,
  });
}

function pictureOf(deck: PrintDeck, random: Random, words: Words): string {
  const id = random.id();
  const width = 40 + random.below(1560);
  const height = 40 + random.below(1560);
  deck.pictures.push({ id, width, height, alt: words.text(4) });
  return id;
}
