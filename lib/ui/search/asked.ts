import type { Topic } from '#lib/model/topic.ts';
import type { Filter } from '#lib/notes/search/filter.ts';
import { withBelow } from '../round/choice.ts';

/** What the student looks for, and among what. Days are calendar days in the student's zone; empty is no limit. */
export interface Asked {
  text: string;
  topicId: string;
  sourceId: string;
  isUnclear: boolean;
  since: string;
  until: string;
  isEveryCourse: boolean;
}

export const NOTHING_ASKED: Asked = {
  text: '',
  topicId: '',
  sourceId: '',
  isUnclear: false,
  since: '',
  until: '',
  isEveryCourse: false,
};

/** So much of a text is kept in the address. */
const LONGEST = 500;

const NAMES = { text: 'q', topicId: 'topic', sourceId: 'source', since: 'since', until: 'until' } as const;

/** Reads what is asked from an address of the desk, such as `#/search?q=tides&unclear=1`. */
export function askedIn(hash: string): Asked {
  const parameters = new URLSearchParams(hash.split('?').slice(1).join('?'));
  const asked = {
    ...NOTHING_ASKED,
    isUnclear: parameters.has('unclear'),
    isEveryCourse: parameters.has('all'),
  };
  for (const [field, name] of Object.entries(NAMES))
    asked[field as keyof typeof NAMES] = parameters.get(name) ?? '';
  return asked;
}

/** The path of the search page that asks this. */
export function pathOf(asked: Asked): string {
  const parameters = new URLSearchParams();
  for (const [field, name] of Object.entries(NAMES)) {
    const value = asked[field as keyof typeof NAMES].slice(0, LONGEST).toWellFormed();
    if (value !== '') parameters.set(name, value);
  }
  if (asked.isUnclear) parameters.set('unclear', '1');
  if (asked.isEveryCourse) parameters.set('all', '1');
  return parameters.size === 0 ? 'search' : `search?${parameters}`;
}

/** How many filters leave something out. */
export const filtersSet = ({ topicId, sourceId, isUnclear, since, until }: Asked): number =>
  [topicId, sourceId, isUnclear, since, until].filter(Boolean).length;

/** The same without filters. */
export const withoutFilters = ({ text, isEveryCourse }: Asked): Asked => ({
  ...NOTHING_ASKED,
  text,
  isEveryCourse,
});

/** @param topics in reading order */
export function filterOf({ topicId, sourceId, isUnclear, since, until }: Asked, topics: Topic[]): Filter {
  return {
    topicIds: topicId === '' ? null : withBelow({ topics }, topicId),
    sourceId: sourceId || null,
    isUnclear,
    since: midnight(since, 0),
    before: midnight(until, 1),
  };
}

/** The beginning of a day, or of one so many days after it, in epoch ms; null for what is no day. */
function midnight(day: string, daysAfter: number): number | null {
  const date = new Date(`${day}T00:00`);
  date.setDate(date.getDate() + daysAfter);
  const at = date.getTime();
  return Number.isNaN(at) ? null : at;
}
