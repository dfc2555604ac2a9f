import { cut, oneLine } from '../limits.ts';
import { texOfImage } from '../maths/image-tex.ts';
import { LONGEST_ALT, MOST_PICTURES } from './limits.ts';

const PICTURE = 'img, canvas, svg';

/** Shorter sides, in CSS pixels, below which a picture is decoration: with and without alternative text. */
const SMALLEST = 24;
const SMALLEST_UNNAMED = 40;

/** Finds the pictures of a passage while it is copied. */
export interface PictureSpotter {
  /** The pictures of the page, each at the number that stands in its place. */
  found: Element[];
  /** What stands in the copy for a picture worth keeping; null for any other element. */
  spot(element: Element, inert: Document): Element | null;
}

export function pictureSpotter(): PictureSpotter {
  const found: Element[] = [];
  return {
    found,
    spot(element, inert) {
      if (found.length === MOST_PICTURES || !isPicture(element)) return null;
      const { width, height } = element.getBoundingClientRect();
      const alt = altOf(element);
      if (Math.min(width, height) < (alt ? SMALLEST : SMALLEST_UNNAMED)) return null;
      const place = inert.createElement('img');
      place.setAttribute('data-picture', String(found.push(element) - 1));
      place.setAttribute('alt', alt);
      place.setAttribute('width', String(Math.round(width)));
      place.setAttribute('height', String(Math.round(height)));
      return place;
    },
  };
}

function isPicture(element: Element): boolean {
  if (!element.matches(PICTURE) || element.matches('[aria-hidden="true" i], [hidden]')) return false;
  if (element.checkVisibility?.({ visibilityProperty: true }) === false) return false;
  // An image that did not come, or not yet, shows its text only; that of a formula becomes one.
  return (
    element.localName !== 'img' || ((element as HTMLImageElement).naturalWidth > 0 && !texOfImage(element))
  );
}

/** A picture's alternative text; empty where it has none. */
export function altOf(element: Element): string {
  const title = [...element.children].find((child) => child.localName === 'title');
  const text =
    element.getAttribute('alt') ??
    element.getAttribute('aria-label') ??
    title?.textContent ??
    element.getAttribute('title');
  return cut(oneLine(text), LONGEST_ALT);
}
