import type { Size, WindowBox } from '#lib/capture/pictures/size.ts';

/** The smallest side of a frame, in CSS pixels. */
export const SMALLEST = 16;

/** How far an arrow key goes, in CSS pixels: finely when it is pressed, quickly while it is held. */
const STEP = 4;
const STEP_HELD = 16;

const WAYS: Readonly<Record<string, [across: number, down: number]>> = {
  ArrowLeft: [-1, 0],
  ArrowRight: [1, 0],
  ArrowUp: [0, -1],
  ArrowDown: [0, 1],
};

/** The frame wholly inside the window, and no smaller than it may be. */
export function within(box: WindowBox, window: Size): WindowBox {
  const width = Math.min(Math.max(SMALLEST, box.width), window.width);
  const height = Math.min(Math.max(SMALLEST, box.height), window.height);
  return {
    left: Math.min(Math.max(0, box.left), window.width - width),
    top: Math.min(Math.max(0, box.top), window.height - height),
    width,
    height,
  };
}

/** The part of the box that is in the window. */
export function shownPart({ left, top, width, height }: WindowBox, window: Size): WindowBox {
  const [x, y] = [Math.max(0, left), Math.max(0, top)];
  return within(
    {
      left: x,
      top: y,
      width: Math.min(left + width, window.width) - x,
      height: Math.min(top + height, window.height) - y,
    },
    window,
  );
}

/** The frame after an arrow key: moved, or with Shift sized by its right and lower side; null for any other key. */
export function moved(
  box: WindowBox,
  { key, shiftKey, repeat }: Pick<KeyboardEvent, 'key' | 'shiftKey' | 'repeat'>,
  window: Size,
): WindowBox | null {
  const way = WAYS[key];
  if (!way) return null;
  const [across, down] = way.map((sign) => sign * (repeat ? STEP_HELD : STEP)) as [number, number];
  if (!shiftKey) return within({ ...box, left: box.left + across, top: box.top + down }, window);
  return within(
    {
      ...box,
      width: Math.min(box.width + across, window.width - box.left),
      height: Math.min(box.height + down, window.height - box.top),
    },
    window,
  );
}

/** The frame between two points. */
export function between(from: { x: number; y: number }, to: { x: number; y: number }): WindowBox {
  return {
    left: Math.min(from.x, to.x),
    top: Math.min(from.y, to.y),
    width: Math.abs(to.x - from.x),
    height: Math.abs(to.y - from.y),
  };
}
