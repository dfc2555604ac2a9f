import { useEffect, useState } from 'preact/hooks';

/** The pages of the desk. */
export type Route =
  | {
      view:
        'coverage' | 'checklist' | 'report' | 'lessons' | 'clips' | 'syllabus' | 'course' | 'print' | 'aside';
    }
  | { view: 'round'; topicId: string | null }
  | { view: 'clip' | 'topic'; id: string };

/** Reads the part of the address after `#`. What is not an address of the desk leads to the coverage. */
export function routeOf(hash: string): Route {
  const [view, id] = hash.replace(/^#\/?/, '').split('/');
  switch (view) {
    case 'checklist':
    case 'report':
    case 'lessons':
    case 'clips':
    case 'syllabus':
    case 'course':
    case 'print':
    case 'aside':
      return { view };
    case 'round':
      return { view, topicId: id || null };
    case 'clip':
    case 'topic':
      return id ? { view, id } : { view: 'coverage' };
    default:
      return { view: 'coverage' };
  }
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
