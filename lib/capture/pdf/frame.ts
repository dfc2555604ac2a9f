import { LONGEST_SIDE } from '#lib/model/picture.ts';
import type { Rect } from './place.ts';

export interface PageSize {
  width: number;
  height: number;
}

/** The passage of a clip that is a frame: its picture, and nothing else to show. */
export const FRAME_HTML = '<figure><img data-picture="0"></figure>';

/** The smallest frame, in points: about three millimetres. */
export const LEAST_SIDE = 9;
const DOTS_AN_INCH = 300;
const POINTS_AN_INCH = 72;

/** The frame between two corners, wherever they lie to each other, kept within the page; it is never too small. */
export function frameBetween(a: { x: number; y: number }, b: { x: number; y: number }, page: PageSize): Rect {
  return within(
    {
      left: Math.min(a.x, b.x),
      top: Math.min(a.y, b.y),
      width: Math.abs(a.x - b.x),
      height: Math.abs(a.y - b.y),
    },
    page,
  );
}

/** The frame moved by so many points, its size kept. */
export function moved(frame: Rect, right: number, down: number, page: PageSize): Rect {
  return {
    ...frame,
    left: between(0, frame.left + right, page.width - frame.width),
    top: between(0, frame.top + down, page.height - frame.height),
  };
}

/** The frame with its right and lower sides moved by so many points. */
export function sized(frame: Rect, right: number, down: number, page: PageSize): Rect {
  return within({ ...frame, width: frame.width + right, height: frame.height + down }, page);
}

function within(frame: Rect, page: PageSize): Rect {
  const left = between(0, frame.left, page.width - LEAST_SIDE);
  const top = between(0, frame.top, page.height - LEAST_SIDE);
  return {
    left,
    top,
    width: between(LEAST_SIDE, frame.left + frame.width - left, page.width - left),
    height: between(LEAST_SIDE, frame.top + frame.height - top, page.height - top),
  };
}

const between = (least: number, value: number, most: number): number =>
  Math.max(least, Math.min(value, most));

/** Pixels for a point in a picture of the frame: as for print, but no side longer than pictures are kept with. */
export function printScale({ width, height }: Pick<Rect, 'width' | 'height'>): number {
  return Math.min(DOTS_AN_INCH / POINTS_AN_INCH, LONGEST_SIDE / Math.max(width, height));
}
