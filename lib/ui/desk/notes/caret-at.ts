import type { Line } from '#lib/model/item.ts';
import { hasTex } from '#lib/notes/split-tex.ts';

type Point = Pick<MouseEvent, 'clientX' | 'clientY' | 'currentTarget' | 'detail'>;

/**
 * The place in a line's text that was pressed; undefined where the keyboard pressed it, or a formula stands in it, whose
 * TeX is not what is seen.
 */
export function caretAt({ clientX, clientY, currentTarget, detail }: Point, line: Line): number | undefined {
  if (detail === 0 || hasTex(line.lead) || hasTex(line.rest)) return undefined;
  const box = currentTarget as HTMLElement;
  const place = document.caretPositionFromPoint(clientX, clientY);
  if (!place || !box.contains(place.offsetNode)) return undefined;
  const range = document.createRange();
  range.setStart(box, 0);
  range.setEnd(place.offsetNode, place.offset);
  return range.toString().length;
}
