import { LONGEST_SIDE } from './limits.ts';

export interface Size {
  width: number;
  height: number;
}

/** A box in the window, in CSS pixels. */
export interface WindowBox extends Size {
  left: number;
  top: number;
}

/** A part of what the window shows: each number is a share of its width or its height, from 0 to 1. */
export type ViewPart = WindowBox;

/**
 * How large a picture is kept, in pixels: no larger than it is, than it is shown (at the screen's resolution), and than
 * the longest side allows.
 *
 * @param natural its own size in pixels; zero where it has none, as a drawing without measures
 * @param shown the size it is shown with, in CSS pixels
 * @param ratio device pixels in a CSS pixel
 */
export function keptSize(natural: Size, shown: Size, ratio: number): Size {
  const own = natural.width > 0 && natural.height > 0;
  const { width, height } = own
    ? natural
    : { width: Math.max(1, shown.width * ratio), height: Math.max(1, shown.height * ratio) };
  const asShown = Math.max(shown.width / width, shown.height / height) * ratio;
  const scale = Math.min(1, asShown || 1, LONGEST_SIDE / Math.max(width, height));
  return { width: Math.max(1, Math.round(width * scale)), height: Math.max(1, Math.round(height * scale)) };
}

/** Which part of what the window shows a box is; right however the page is zoomed, by keys or by two fingers. */
export function partOfView({ left, top, width, height }: WindowBox, view: Window): ViewPart {
  const { offsetLeft = 0, offsetTop = 0, scale = 1 } = view.visualViewport ?? {};
  const across = scale / view.innerWidth;
  const down = scale / view.innerHeight;
  return {
    left: (left - offsetLeft) * across,
    top: (top - offsetTop) * down,
    width: width * across,
    height: height * down,
  };
}
