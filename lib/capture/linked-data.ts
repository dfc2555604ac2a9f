import { oneLine } from './limits.ts';

const LONGEST_DATA = 500_000;
const DEEPEST = 4;

/** The author's name in a page's linked data (JSON-LD, schema.org's `author`); empty where there is none. */
export function authorFromData(doc: Document): string {
  for (const script of doc.querySelectorAll('script[type="application/ld+json" i]')) {
    const text = script.textContent;
    if (text.length > LONGEST_DATA) continue;
    const author = oneLine(authorIn(parsed(text), DEEPEST));
    if (author) return author;
  }
  return '';
}

function parsed(text: string): unknown {
  try {
    return JSON.parse(text);
  } catch {
    return null;
  }
}

/** An author of the thing itself, of the first of several, or of the first in its graph. */
function authorIn(data: unknown, depth: number): string {
  if (typeof data !== 'object' || data === null || depth === 0) return '';
  if (Array.isArray(data)) {
    for (const each of data.slice(0, 50)) {
      const author = authorIn(each, depth - 1);
      if (author) return author;
    }
    return '';
  }
  const thing: { author?: unknown; '@graph'?: unknown } = data;
  return names(thing.author) || authorIn(thing['@graph'], depth - 1);
}

function names(author: unknown): string {
  if (typeof author === 'string') return URL.canParse(author) ? '' : author;
  if (typeof author !== 'object' || author === null) return '';
  if (Array.isArray(author))
    return author
      .slice(0, 20)
      .map((each) => (Array.isArray(each) ? '' : names(each)))
      .filter(Boolean)
      .join(', ');
  const { name }: { name?: unknown } = author;
  return typeof name === 'string' ? name : '';
}
