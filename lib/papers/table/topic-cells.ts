import type { Id } from '#lib/model/basics.ts';
import type { Topic } from '#lib/model/topic.ts';
import { headingKey, headingOf } from '#lib/exchange/out/sections.ts';
import { activeTopics } from '#lib/syllabus/tree.ts';

/** What a cell of topics names. */
export interface NamedTopics {
  topicIds: Id[];
  /** What is no topic of the course, as it is written. */
  unknown: string[];
  /** What several topics are called: none of them is taken. */
  several: string[];
}

/**
 * Reads cells that name topics of a course by code, title, or both; several with semicolons, commas, slashes or "and"
 * between them, which a title may hold as well.
 */
export function topicCells(topics: readonly Topic[]): (cell: string) => NamedTopics {
  const byName = new Map<string, Set<Id>>();
  for (const topic of activeTopics(topics))
    for (const name of new Set([topic.code, topic.title, headingOf(topic)])) {
      if (name.trim() === '') continue;
      const key = headingKey(name);
      byName.set(key, (byName.get(key) ?? new Set()).add(topic.id));
    }
  return (cell) => {
    const named: NamedTopics = { topicIds: [], unknown: [], several: [] };
    for (const name of namesIn(cell, (one) => byName.has(headingKey(one)))) {
      const found = [...(byName.get(headingKey(name)) ?? [])];
      if (found.length === 0) named.unknown.push(name);
      else if (found.length > 1) named.several.push(name);
      else if (!named.topicIds.includes(found[0]!)) named.topicIds.push(found[0]!);
    }
    return named;
  };
}

const DIVIDERS = [/\s*[;\n|]\s*/, /\s*,\s+|,/, /\s*[/&+]\s*|\s+and\s+/i];

/** The names in a cell: it is divided further only where what it holds is no name by itself. */
function namesIn(cell: string, isName: (one: string) => boolean, level = 0): string[] {
  const text = cell.trim();
  const divider = DIVIDERS[level];
  if (text === '') return [];
  if (isName(text) || !divider) return [text];
  const pieces = text.split(divider).flatMap((piece) => namesIn(piece, isName, level + 1));
  // A piece that is a name tells that it was a list; else it may be one title that the course does not have.
  return pieces.some(isName) || level === 0 ? pieces : [text];
}
