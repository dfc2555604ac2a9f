import { moveChildren } from '../dom.ts';
import { MOST_PICTURES } from '../pictures/limits.ts';
import { picturePlaces } from '../pictures/places.ts';
import { cleanPassage, serialise } from '../sanitise.ts';
import { StudentError } from '#lib/model/student-error.ts';

/** Markup with the pictures that its places are numbered by. */
export interface Piece<P> {
  html: string;
  pictures: readonly (P | null)[];
}

export interface OwnPart<P> {
  /** The heading that it stands under; empty where it stands under none. */
  heading: string;
  html: string;
  pictures: P[];
}

/**
 * Joins pieces of own notes, one below the other, and cuts them at their highest headings if that is wished. Pictures
 * are numbered anew within each part; a place without its picture keeps its words.
 * Errors: StudentError `errorOwnPictures` where a part has more pictures than a clip holds.
 *
 * @param doc any document of the window that the work is done in
 */
export function joinParts<P>(pieces: readonly Piece<P>[], isSplit: boolean, doc: Document): OwnPart<P>[] {
  const inert = doc.implementation.createHTMLDocument('');
  const all = inert.createElement('div');
  const pictures: (P | null)[] = [];
  for (const piece of pieces) {
    const fragment = cleanPassage(piece.html, doc);
    for (const place of picturePlaces(fragment))
      place.setAttribute('data-picture', String(pictures.length + Number(place.dataset['picture'])));
    pictures.push(...piece.pictures);
    all.append(inert.importNode(fragment, true));
  }
  const parts = isSplit ? cutAtHeadings(all) : [all];
  return parts.map((part) => finish(part, pictures, parts.length > 1));
}

/** How many clips the notes would be cut into. */
export function countParts(html: readonly string[], doc: Document): number {
  const all = doc.implementation.createHTMLDocument('').createElement('div');
  for (const one of html) all.append(cleanPassage(one, doc));
  return cutAtHeadings(all).length;
}

const HEADINGS = ['h1', 'h2', 'h3', 'h4', 'h5', 'h6'] as const;

/** Cut before each heading of the highest kind of which there are two; a title that stands alone cuts nothing. */
function cutAtHeadings(all: Element): Element[] {
  const children = [...all.children];
  const kind = HEADINGS.find((name) => children.filter(({ localName }) => localName === name).length > 1);
  if (!kind) return [all];
  const parts: Element[] = [];
  let part = all.ownerDocument.createElement('div');
  for (const node of [...all.childNodes]) {
    if (node.nodeName.toLowerCase() === kind && hasSaid(part)) {
      parts.push(part);
      part = all.ownerDocument.createElement('div');
    }
    part.append(node);
  }
  return [...parts, part];
}

/** Whether there is more in it than headings. */
const hasSaid = (part: Element): boolean =>
  [...part.children].some(({ localName }) => !HEADINGS.some((name) => name === localName)) ||
  [...part.childNodes].some((node) => node.nodeName === '#text' && node.textContent?.trim());

function finish<P>(part: Element, pictures: readonly (P | null)[], isOneOfMany: boolean): OwnPart<P> {
  const own: P[] = [];
  for (const place of picturePlaces(part)) {
    const picture = pictures[Number(place.dataset['picture'])];
    if (picture) place.setAttribute('data-picture', String(own.push(picture) - 1));
    else place.replaceWith(place.alt);
  }
  if (own.length > MOST_PICTURES) throw new StudentError('errorOwnPictures', own.length, MOST_PICTURES);
  const heading = isOneOfMany ? (part.querySelector(HEADINGS.join())?.textContent ?? '') : '';
  const fragment = part.ownerDocument.createDocumentFragment();
  moveChildren(part, fragment);
  return {
    heading: heading.replace(/\s+/g, ' ').trim().slice(0, 500),
    html: serialise(fragment).trim(),
    pictures: own,
  };
}
