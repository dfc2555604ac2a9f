import type { Rect } from '#lib/capture/pdf/place.ts';

/** Where a rectangle of the page stands at so many pixels a point. */
export const boxStyle = (rect: Rect, scale: number): Record<string, string> => ({
  left: `${rect.left * scale}px`,
  top: `${rect.top * scale}px`,
  width: `${rect.width * scale}px`,
  height: `${rect.height * scale}px`,
});
