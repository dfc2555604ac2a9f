/** Where the script that reads drawn formulas leaves its function for the other scripts of its world in the page. */
const KEY = 'plumblineDrawings';

/** Gives the content of a <math> for a formula that is only drawn; null where it is not understood. */
export type DrawingReader = (container: Element) => Element | null;

/** A formula that MathJax 3 or 4 has drawn, with no MathML beside: it takes the drawing reader to rebuild it. */
export const DRAWN = 'mjx-container:not(:has(math))';

const world = globalThis as { [KEY]?: DrawingReader };

/** Leaves the reader (./drawn-maths.ts). It has a script of its own, since few pages need it. */
export function lendDrawingReader(reader: DrawingReader): void {
  world[KEY] = reader;
}

/** Reads a drawing with the reader that was left; null without one. */
export const readDrawing: DrawingReader = (container) => world[KEY]?.(container) ?? null;
