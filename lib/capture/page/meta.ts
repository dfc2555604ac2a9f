import { oneLine } from '../limits.ts';

/** The contents of all <meta> elements of these names; pages use `name` and `property` alike. */
export function metas(doc: Document, ...names: string[]): string[] {
  return names
    .flatMap((name) => [...doc.querySelectorAll(`meta[name="${name}" i], meta[property="${name}" i]`)])
    .map((element) => oneLine(element.getAttribute('content')))
    .filter((content) => content !== '');
}

export function meta(doc: Document, name: string): string {
  return metas(doc, name)[0] ?? '';
}

/** The first of what the page says that can be read as what is asked for; else empty. */
export function firstRead(said: readonly string[], read: (text: string) => string): string {
  return said.map(read).find(Boolean) ?? '';
}
