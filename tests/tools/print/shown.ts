import type { PageDriver } from '../driver.ts';

/** A run of words on a side as the screen shows it; lengths in CSS pixels from the upper left corner of the side. */
export interface ShownWords {
  text: string;
  /** Its class. */
  style: string;
  /** Where the letters of each of its lines stand, and where they begin and end. */
  lines: { baseline: number; left: number; right: number }[];
}

export interface ShownSide {
  words: ShownWords[];
  columns: { left: number; right: number; top: number; bottom: number }[];
  /** What is taller than the height that it was given. */
  overflowing: string[];
}

/** The sides as the page of the desk shows them, formulas aside. Only for a window that shows them at full size. */
export const shownSides = (page: PageDriver): Promise<ShownSide[]> =>
  page.run(() => {
    const pen = new OffscreenCanvas(1, 1).getContext('2d')!;
    /** How far letters reach below their line, by font. */
    const descents = new Map<string, number>();
    const descentOf = (element: Element) => {
      const { fontStyle, fontWeight, fontSize, fontFamily } = getComputedStyle(element);
      const font = `${fontStyle} ${fontWeight} ${fontSize} ${fontFamily}`;
      if (!descents.has(font)) {
        pen.font = font;
        descents.set(font, pen.measureText('x').fontBoundingBoxDescent);
      }
      return descents.get(font)!;
    };
    // One for all: a document keeps every range up to date.
    const range = document.createRange();
    return [...document.querySelectorAll('.print-page')].map((side) => {
      const { left, top } = side.getBoundingClientRect();
      const words = [...side.querySelectorAll('.print-cell > span:not(.print-formula)')].map((span) => {
        const letters = span.firstChild as Text;
        // Blanks at either end may hang over the edge.
        range.setStart(letters, letters.data.search(/\S|$/));
        range.setEnd(letters, Math.max(range.startOffset, letters.data.trimEnd().length));
        const descent = descentOf(span);
        const lines: { baseline: number; left: number; right: number }[] = [];
        for (const box of range.getClientRects()) {
          if (box.width === 0 || box.height === 0) continue;
          const baseline = box.bottom - top - descent;
          const line = lines.at(-1);
          // Blanks at the end of a line have a box of their own.
          if (line?.baseline === baseline) line.right = box.right - left;
          else lines.push({ baseline, left: box.left - left, right: box.right - left });
        }
        return { text: span.textContent, style: span.className, lines };
      });
      const columns = [...side.querySelectorAll('.print-column')].map((column) => {
        const box = column.getBoundingClientRect();
        return {
          left: box.left - left,
          right: box.right - left,
          top: box.top - top,
          bottom: box.bottom - top,
        };
      });
      const overflowing = [...side.querySelectorAll<HTMLElement>('.print-part')]
        .filter((part) =>
          [...part.children].some(
            // Heights are rounded down by a quarter of a pixel at most.
            (cell) => cell.getBoundingClientRect().height > part.getBoundingClientRect().height + 0.26,
          ),
        )
        .map((part) => part.textContent);
      return { words, columns, overflowing };
    });
  });
