/** A box in the window, in CSS pixels. */
export interface Box {
  left: number;
  top: number;
  right: number;
  bottom: number;
}

export interface Size {
  width: number;
  height: number;
}

const GAP = 12;
const EDGE = 8;

/**
 * Where the slip goes: beside the selection, right of it where there is room, else left, else below, else above, else
 * at the window's right edge; always wholly inside the window. Gives its left and top in CSS pixels.
 */
export function placeSlip(selection: Box, slip: Size, window: Size): { left: number; top: number } {
  const within = (at: number, size: number, room: number) => Math.max(EDGE, Math.min(at, room - size - EDGE));
  // A selection that is scrolled out of the window would take the slip with it.
  const at = (left: number, top: number) => ({
    left: within(left, slip.width, window.width),
    top: within(top, slip.height, window.height),
  });
  const rightOf = selection.right + GAP;
  if (rightOf + slip.width + EDGE <= window.width) return at(rightOf, selection.top);
  const leftOf = selection.left - GAP - slip.width;
  if (leftOf >= EDGE) return at(leftOf, selection.top);
  const below = selection.bottom + GAP;
  if (below + slip.height + EDGE <= window.height) return at(selection.left, below);
  const above = selection.top - GAP - slip.height;
  if (above >= EDGE) return at(selection.left, above);
  return at(window.width, selection.top);
}
