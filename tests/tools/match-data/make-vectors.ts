// Makes assets/match/word-vectors.json from WordNet 3.0, as Debian's wordnet-base holds it. Needed only to make it
// anew; takes about a minute: node tests/tools/match-data/make-vectors.ts
import { writeFileSync } from 'node:fs';
import { Stems, plainText, termsOf } from '#lib/syllabus/match/terms.ts';
import { Random } from '#tests/bench/random.ts';
import { Cooccurrence } from './cooccurrence.ts';
import { withDebianPackage } from './debian-package.ts';
import { leadingVectors } from './leading-vectors.ts';
import { packed } from './pack-vectors.ts';
import { wordnetTexts } from './wordnet.ts';

/** Stems for which co-occurrence is counted, and how many of them, the commonest, are shipped. */
const COUNTED = 24_000;
const SHIPPED = 15_800;
const DIMENSIONS = 160;
/** Component k is scaled by its eigenvalue to this power: Levy, Goldberg & Dagan (2015) found 0 to 0.5 to be best. */
const EIGENVALUE_POWER = 0.2;
/** Words of the meanings that a meaning points to count half, and at most so many of them are taken. */
const LINKED_WEIGHT = 0.5;
const MOST_LINKED = 30;
const LONGEST_STEM = 18;

const stems = new Stems();
/** Names (of people, places, genera) are passed over: a syllabus has few, and WordNet has very many. */
const stemsOf = (text: string): string[] =>
  termsOf(plainText(text), stems)
    .filter(({ surface }) => /^\p{Ll}/u.test(surface))
    .map(({ stem }) => stem);

const texts = withDebianPackage('wordnet-base', '1:3.0-37', wordnetTexts).map((text) => ({
  own: [...stemsOf(text.words), ...stemsOf(text.gloss)],
  linked: stemsOf(text.linked),
}));

/** In how many texts each stem stands. */
const having = new Map<string, number>();
for (const { own } of texts) for (const stem of new Set(own)) having.set(stem, (having.get(stem) ?? 0) + 1);
const vocabulary = [...having]
  .filter(([stem]) => /^[a-z]+$/.test(stem) && stem.length <= LONGEST_STEM)
  .sort(([a, n], [b, m]) => m - n || (a < b ? -1 : 1))
  .slice(0, COUNTED);
const placeOf = new Map(vocabulary.map(([stem], place) => [stem, place]));
const placesOf = (list: string[]): number[] => list.flatMap((stem) => placeOf.get(stem) ?? []);

const counts = new Cooccurrence(vocabulary.length);
for (const text of texts) {
  const own = placesOf(text.own);
  const linked = placesOf(text.linked).slice(0, MOST_LINKED);
  own.forEach((a, i) => {
    for (const b of own.slice(i + 1)) counts.add(a, b, 1);
    for (const b of linked) counts.add(a, b, LINKED_WEIGHT);
  });
}

const random = new Random(7);
const { vectors, values } = leadingVectors(counts.ppmi(), DIMENSIONS, () => random.next());
const scaled = vectors.map((x, at) => x * Math.abs(values[at % DIMENSIONS]!) ** EIGENVALUE_POWER);
const shipped = vocabulary.slice(0, SHIPPED);
const file = new URL('../../../assets/match/word-vectors.json', import.meta.url);
const data = packed({
  stems: shipped.map(([stem]) => stem),
  rarities: shipped.map(([, n]) => Math.log(texts.length / (n + 1))),
  mostRare: Math.log(texts.length),
  dimensions: DIMENSIONS,
  vectors: scaled.subarray(0, SHIPPED * DIMENSIONS),
});
writeFileSync(file, `${JSON.stringify(data, null, 2)}\n`);
console.log(`${SHIPPED} of ${having.size} stems; the rarest is in ${shipped.at(-1)?.[1]} texts`);
