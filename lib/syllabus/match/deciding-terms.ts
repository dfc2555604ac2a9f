import type { Evidence } from './evidence.ts';
import { rarityOf } from './evidence.ts';
import { isPair } from './postings.ts';
import { readableTerm } from './readable-term.ts';
import type { TopicIndex } from './topic-index.ts';
import { MEANING_WEIGHT } from './weights.ts';

const TERMS_SHOWN = 4;

/** Below this part of the most telling term's evidence a term did not decide. */
const TELLING = 0.1;

/**
 * The terms of a passage that spoke most for a topic, as they stand in it. A pair of words stands for its words, too,
 * so it is shown rather than either of them.
 */
export function decidingTerms(evidence: Evidence, index: TopicIndex, place: number): string[] {
  const said = evidenceByTerm(evidence, index, place);
  const inAll = (key: string): number =>
    [key, ...(isPair(key) ? key.split(' ') : [])].reduce((sum, part) => sum + (said.get(part) ?? 0), 0);
  const ordered = [...said.keys()].sort((a, b) => inAll(b) - inAll(a));
  const least = TELLING * inAll(ordered[0] ?? '');
  const shown: string[] = [];
  for (const key of ordered) {
    if (shown.length === TERMS_SHOWN || inAll(key) < least) break;
    if (!shown.some((other) => overlap(other, key))) shown.push(key);
  }
  return shown.map((key) => readableTerm(evidence.terms.get(key)?.surface ?? key));
}

/** What each term says for a topic by standing in it, and by its part in what the passage means. */
function evidenceByTerm(
  { terms, room, reach }: Evidence,
  index: TopicIndex,
  place: number,
): Map<string, number> {
  const said = new Map<string, number>();
  for (const [key, { weight }] of terms) {
    const shared = (weight * rarityOf(key) * index.postings.evidence(key, place)) / room;
    const near = isPair(key) ? 0 : (MEANING_WEIGHT * weight * index.meanings.pull(place, key)) / reach;
    if (shared > 0 || near > 0) said.set(key, shared + Math.max(0, near));
  }
  return said;
}

/** Whether two terms, each one stem or two, share a stem. */
function overlap(a: string, b: string): boolean {
  const stems = a.split(' ');
  return b.split(' ').some((stem) => stems.includes(stem));
}
