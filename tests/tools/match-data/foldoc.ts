import type { CollectedPassage, CollectedTopic } from './collection-file.ts';

/** An entry starts at the margin; its text is set in. */
const ENTRY = /\n(?=\S)/;
const LABELLED = /^([^\n]+)\n(?:[^\s][^\n]*\n)*\n {3}<([^<>]+)>\s(.*)$/s;

/** Reads FOLDOC as Debian's dict-foldoc holds it: definitions that open with their subjects, "<language, tool>". */
export function readFoldoc(dictionary: string): { topics: CollectedTopic[]; passages: CollectedPassage[] } {
  const topics: CollectedTopic[] = [];
  const placeOf = (label: string): number => {
    const at = topics.findIndex(({ title }) => title === label);
    return at >= 0 ? at : topics.push({ title: label, text: '' }) - 1;
  };
  const passages = dictionary.split(ENTRY).flatMap((entry) => {
    const [, head, labels, body] = LABELLED.exec(entry) ?? [];
    if (!head || !labels || !body) return [];
    return [{ topics: labels.split(',').map((l) => placeOf(l.trim())), head, text: plain(body) }];
  });
  return { topics, passages };
}

/** The text of a definition without what only the dictionary needs: sources, dates, braces, further labels. */
function plain(body: string): string {
  return body
    .replace(/\(\d{4}-\d\d-\d\d\)/g, ' ')
    .replace(/\[\{?Jargon File\}?\]/g, ' ')
    .replace(/(^|\n)\s*\d+\.\s+<[^<>]+>/g, ' ')
    .replace(/\{\(?([^{}]*?)\)?\}/g, '$1')
    .replace(/\((?:http|ftp|news):[^()]*\)|(?:https?|ftp|news):\S+/g, ' ')
    .replace(/\s+/g, ' ')
    .trim();
}
