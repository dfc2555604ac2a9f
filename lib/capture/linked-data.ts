import { oneLine } from './limits.ts';

const LONGEST_DATA = 500_000;
const DEEPEST = 4;

/** A thing of schema.org as a page may have it, with anything in it. */
export type Thing = Readonly<Record<string, unknown>>;

/**
 * What `read` finds in a page's linked data (JSON-LD): in the thing itself, in the first of several, or in the first of
 * its graph; empty where there is none.
 */
export function dataOf(doc: Document, read: (thing: Thing) => string): string {
  for (const script of doc.querySelectorAll('script[type="application/ld+json" i]')) {
    const text = script.textContent;
    if (text.length > LONGEST_DATA) continue;
    const found = oneLine(firstIn(parsed(text), read, DEEPEST));
    if (found) return found;
  }
  return '';
}

/** A text, or the first of the named texts in a thing. */
export function textIn(value: unknown, names: readonly string[] = []): string {
  if (typeof value === 'string') return value;
  if (!isThing(value)) return '';
  const found = names.map((name) => value[name]).find((each) => typeof each === 'string');
  return typeof found === 'string' ? found : '';
}

/** The names of schema.org's `author`, where it is not an address. */
export function authorIn({ author }: Thing): string {
  return (Array.isArray(author) ? author.slice(0, 20) : [author]).map(nameOf).filter(Boolean).join(', ');
}

function nameOf(author: unknown): string {
  const name = textIn(author, ['name']);
  return typeof author === 'string' && URL.canParse(author) ? '' : name;
}

function isThing(value: unknown): value is Thing {
  return typeof value === 'object' && value !== null;
}

function parsed(text: string): unknown {
  try {
    return JSON.parse(text);
  } catch {
    return null;
  }
}

function firstIn(data: unknown, read: (thing: Thing) => string, depth: number): string {
  if (!isThing(data) || depth === 0) return '';
  if (!Array.isArray(data)) return read(data) || firstIn(data['@graph'], read, depth - 1);
  for (const each of data.slice(0, 50)) {
    const found = firstIn(each, read, depth - 1);
    if (found) return found;
  }
  return '';
}
