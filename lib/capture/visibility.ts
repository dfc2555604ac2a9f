import { isElement } from './dom.ts';

/** Reading styles costs; past this many elements only attributes tell what is hidden. */
const MOST_LOOKED_AT = 5000;

/** Elements that say nothing of how they are laid out. */
const NEUTRAL = /^(span|div|a|label|time|.+-.+)$/;

/** How an element is shown: not at all; or, for a neutral element, as a block or inline. Null: as its name says. */
export type Look = 'hidden' | 'block' | 'inline' | null;

/**
 * Tells how elements of a live page look, by their computed style. Elements that only screen readers are meant to
 * find, and those the student cannot select, count as hidden.
 *
 * @param view null where there is no layout: then nothing is known of any element
 * @param top an ancestor of all that will be asked about
 */
export function looker(view: Window | null, top: Node): (element: Element) => Look {
  let left = view ? MOST_LOOKED_AT : 0;
  const around = isElement(top) ? top : top.parentElement;
  const selectable = !view || !around || canSelect(view.getComputedStyle(around));
  return (element) => {
    if (!view || left === 0) return null;
    left--;
    const style = view.getComputedStyle(element);
    // Where the whole page forbids selecting, what was selected all the same counts.
    if (isHidden(style) || (selectable && !canSelect(style))) return 'hidden';
    return NEUTRAL.test(element.localName) ? layout(style, element, view) : null;
  };
}

function canSelect(style: CSSStyleDeclaration): boolean {
  return style.userSelect !== 'none' && style.getPropertyValue('-webkit-user-select') !== 'none';
}

function isHidden(style: CSSStyleDeclaration): boolean {
  if (style.display === 'none' || style.visibility === 'hidden' || style.visibility === 'collapse')
    return true;
  const clipped = /^(inset\((50|100)%|circle\(0)/.test(style.clipPath || '') || isNothing(style.clip);
  if (clipped && /^(absolute|fixed)$/.test(style.position)) return true;
  return style.overflow === 'hidden' && isPoint(style.width) && isPoint(style.height);
}

/** `clip: rect(0, 0, 0, 0)` or a pixel of it. */
function isNothing(clip: string | undefined): boolean {
  const sides = /^rect\(([^)]*)\)$/.exec(clip ?? '')?.[1]?.match(/\d+/g);
  return sides?.length === 4 && sides.every((side) => Number(side) <= 1);
}

function isPoint(length: string): boolean {
  return /^[01](\.0*)?px$/.test(length);
}

function layout(style: CSSStyleDeclaration, element: Element, view: Window): Look {
  const { display } = style;
  if (display === 'inline') return 'inline';
  if (!/^(block|flow-root|flex|grid|list-item|table)$/.test(display)) return null;
  // Out of the flow, or in a row: CSS makes a block of it, but it reads as part of the line.
  if (/^(absolute|fixed)$/.test(style.position) || (style.float || 'none') !== 'none') return null;
  const parent = element.parentElement;
  return parent && /flex$/.test(view.getComputedStyle(parent).display) ? null : 'block';
}
