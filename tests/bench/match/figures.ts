import type { Figure } from '../figure.ts';
import { brief, figure } from '../figure.ts';
import { Random } from '../random.ts';
import { bm25, miniSearch } from './baselines.ts';
import type { Ranker, TaggedAs } from './baselines.ts';
import { type Collection, type Draw, draw, readCollection } from './collection.ts';
import { calibrationError, ours, outside, topThree } from './measures.ts';
import { indexOf } from './syllabus-of.ts';

/** How many draws of the tagged texts are averaged over. */
const DRAWS = 5;
const GOALS = [
  { tagged: 0, points: 5 },
  { tagged: 5, points: 8 },
];
/** Subjects of one collection that the other has as well: their texts are not outside it. */
const SHARED = {
  foldoc: ['mathematics', 'logic', 'electronics', 'data', 'unit', 'theory', 'person', 'history', 'legal'],
  webster: [
    'Mathematics',
    'Algebra',
    'Arithmetic',
    'Geometry',
    'Trigonometry',
    'Logic',
    'Electricity',
    'Printing',
  ],
};

/** How the match does on the test parts of the labelled collections, beside both baselines. */
export function qualityFigures(): Figure[] {
  const collections = { foldoc: readCollection('foldoc'), webster: readCollection('webster') };
  const texts = (name: 'foldoc' | 'webster') => textsWithout(collections[name], SHARED[name]);
  return [
    ...figuresOf('foldoc', collections.foldoc, texts('webster')),
    ...figuresOf('webster', collections.webster, texts('foldoc')),
  ];
}

function figuresOf(name: string, collection: Collection, foreign: readonly string[]): Figure[] {
  return GOALS.flatMap(({ tagged, points }) => {
    const draws = Array.from({ length: tagged > 0 ? DRAWS : 1 }, (_, seed) =>
      draw(collection.test, collection.topics.length, tagged, new Random(seed)),
    );
    const indexes = draws.map((one) => indexOf(collection.topics, one.tagged));
    const mean = (measure: (one: Draw, i: number) => number) =>
      draws.reduce((sum, one, i) => sum + measure(one, i), 0) / draws.length;
    const beside = baselines(collection, mean);
    const flaggedInside = mean(({ queries }, i) =>
      outside(
        indexes[i]!,
        queries.map((q) => q.text),
      ),
    );
    return [
      figure({
        name: `syllabus/match-${name}-top3-${tagged}`,
        value: mean(({ queries }, i) => topThree(ours(indexes[i]!), queries)),
        unit: '%',
        against: beside,
        goal: { atLeast: points, more: true },
      }),
      figure({
        name: `syllabus/match-${name}-calibration-${tagged}`,
        value: mean(({ queries }, i) => calibrationError(indexes[i]!, queries)),
        unit: '%',
        goal: { atMost: 8 },
      }),
      figure({
        name: `syllabus/match-${name}-outside-found-${tagged}`,
        value: mean((_, i) => outside(indexes[i]!, foreign)),
        unit: '%',
      }),
      figure({
        name: `syllabus/match-${name}-outside-wrongly-${tagged}`,
        value: flaggedInside,
        unit: '%',
      }),
    ];
  });
}

/** The better baseline, each given the tagged texts in the way that serves it best. */
function baselines({ topics }: Collection, mean: (measure: (one: Draw) => number) => number) {
  const best = (make: (tagged: Draw['tagged'], as: TaggedAs) => Ranker) =>
    Math.max(
      ...(['appended', 'documents'] as const).map((as) =>
        mean(({ tagged, queries }) => topThree(make(tagged, as), queries)),
      ),
    );
  const mini = best((tagged, as) => miniSearch(topics, tagged, as));
  const plain = best((tagged, as) => bm25(topics, tagged, as));
  const [less, more] = mini > plain ? ['BM25', 'MiniSearch'] : ['MiniSearch', 'BM25'];
  return { what: `${less} ${brief(Math.min(mini, plain))} %, ${more}`, value: Math.max(mini, plain) };
}

/** Texts of the test part that have none of some subjects. */
function textsWithout({ topics, test }: Collection, titles: readonly string[]): string[] {
  return test.filter((t) => !t.topics.some((i) => titles.includes(topics[i]!.title))).map(({ text }) => text);
}
