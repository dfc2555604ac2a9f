import type { Size, WindowBox } from '#lib/capture/pictures/size.ts';
import { shownPart } from './frame-box.ts';

/** What may be framed whole. */
const DIAGRAM = 'figure, img, svg, canvas, video, table';

const SMALLEST_GUESS = 40;

const windowOf = (doc: Document): Size => ({
  width: doc.defaultView!.innerWidth,
  height: doc.defaultView!.innerHeight,
});

/** The part in view of the diagram that takes most of the window: where a frame begins. Else the window's middle. */
export function likelyBox(doc: Document): WindowBox {
  const window = windowOf(doc);
  const middle = {
    left: window.width / 4,
    top: window.height / 4,
    width: window.width / 2,
    height: window.height / 2,
  };
  const boxes = [...doc.querySelectorAll('img, svg, canvas, video')]
    .map((each) => each.getBoundingClientRect())
    .filter(
      ({ left, top, right, bottom, width, height }) =>
        Math.min(width, height) >= SMALLEST_GUESS &&
        left < window.width - SMALLEST_GUESS &&
        top < window.height - SMALLEST_GUESS &&
        right > SMALLEST_GUESS &&
        bottom > SMALLEST_GUESS,
    )
    .map((box) => shownPart(box, window))
    .sort((a, b) => b.width * b.height - a.width * a.height);
  return boxes[0] ?? middle;
}

/** The part in view of the diagram at a point of the window; null where there is none. */
export function diagramAt(doc: Document, { x, y }: { x: number; y: number }): WindowBox | null {
  for (const hit of doc.elementsFromPoint(x, y)) {
    const diagram = hit.closest('svg') ?? (hit.matches(DIAGRAM) ? hit : null);
    if (diagram) return shownPart(diagram.getBoundingClientRect(), windowOf(doc));
  }
  return null;
}
