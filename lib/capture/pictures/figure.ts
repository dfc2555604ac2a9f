import { serialise } from '../allow-only.ts';
import type { Size } from './size.ts';

/** Markup of a figure: the places of pictures, then the words under them, one paragraph a line; numbered from zero. */
export function figureOf(
  doc: Document,
  words: string,
  pictures: readonly (Size & { alt: string })[],
): string {
  const inert = doc.implementation.createHTMLDocument('');
  const fragment = inert.createDocumentFragment();
  const lines = words.split('\n').filter(Boolean);
  if (pictures.length > 0) {
    const figure = inert.createElement('figure');
    pictures.forEach(({ alt, width, height }, number) =>
      figure.append(placeOf(inert, number, alt, { width, height })),
    );
    fragment.append(figure);
  }
  for (const line of lines) {
    const paragraph = inert.createElement('p');
    paragraph.append(line);
    fragment.append(paragraph);
  }
  return serialise(fragment);
}

function placeOf(inert: Document, number: number, alt: string, { width, height }: Size): Element {
  const place = inert.createElement('img');
  place.setAttribute('data-picture', String(number));
  place.setAttribute('alt', alt);
  place.setAttribute('width', String(Math.round(width)));
  place.setAttribute('height', String(Math.round(height)));
  return place;
}
