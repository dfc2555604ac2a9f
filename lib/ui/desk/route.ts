import { useEffect, useState } from 'preact/hooks';

/** Pages that are about the whole course. */
const WHOLE = [
  'coverage',
  'checklist',
  'report',
  'lessons',
  'clips',
  'search',
  'syllabus',
  'course',
  'print',
  'out',
  'own',
  'aside',
] as const;

/** Pages about one thing, by its id. */
const SINGLE = ['clip', 'topic'] as const;

/** The pages of the desk. */
export type Route =
  | { view: (typeof WHOLE)[number] }
  | { view: 'notes' }
  | { view: 'round'; topicId: string | null }
  /** `itemId` is a question or line of it to begin at. */
  | { view: (typeof SINGLE)[number]; id: string; itemId?: string }
  | { view: 'read'; id: string }
  | { view: 'condense'; id: string };

/**
 * Reads the part of the address after `#`. What is not an address of the desk leads to the coverage. What follows a
 * question mark is for the page itself.
 */
export function routeOf(hash: string): Route {
  const [view, id, itemId] = hash.replace(/^#\/?/, '').replace(/\?.*$/s, '').split('/');
  const whole = WHOLE.find((one) => one === view);
  if (whole) return { view: whole };
  if (view === 'notes') return { view };
  if (view === 'round') return { view, topicId: id || null };
  if (!id) return { view: 'coverage' };
  const single = SINGLE.find((one) => one === view);
  if (single) return { view: single, id, ...(itemId && { itemId }) };
  return view === 'read' || view === 'condense' ? { view, id } : { view: 'coverage' };
}

/** The link to a page of the desk from within the desk. */
export const linkTo = (path: string): string => `#/${path}`;

/** Where the desk is now; follows the address. */
export function useRoute(): Route {
  const [hash, setHash] = useState(() => location.hash);
  useEffect(() => {
    const closing = new AbortController();
    addEventListener('hashchange', () => setHash(location.hash), { signal: closing.signal });
    return () => closing.abort();
  }, []);
  return routeOf(hash);
}
