import type { Course } from '#lib/model/course.ts';

export type PaperName = Course['paper'];

/** Width and height in mm: A4 of ISO 216, and the A size of ANSI/ASME Y14.1 (8.5 by 11 inches), which is US Letter. */
export const PAPERS: Record<PaperName, { width: number; height: number }> = {
  a4: { width: 210, height: 297 },
  letter: { width: 215.9, height: 279.4 },
};

/** CSS pixels in a millimetre: 96 to the inch of 25.4 mm (CSS Values and Units Level 4, absolute lengths). */
export const PX_PER_MM = 96 / 25.4;

/** In mm. Printers leave some 4 mm blank at the edges: nothing stands there. */
const MARGIN = { top: 16, side: 12, bottom: 10 };
const COLUMN_GAP = 8;

/** Where everything stands on a side, in CSS pixels. */
export interface Frame {
  paper: PaperName;
  columns: 1 | 2;
  page: { width: number; height: number };
  /** The blank above the columns, in which the running head stands. */
  top: number;
  /** The blank on the left of the columns, and on their right. */
  side: number;
  columnGap: number;
  columnWidth: number;
  columnHeight: number;
}

/** The frame of a side. Columns are whole pixels, so that heights add up without rounding; they stand in the middle. */
export function frameOf({ paper, columns }: Pick<Course, 'paper' | 'columns'>): Frame {
  const { width, height } = PAPERS[paper];
  const page = { width: width * PX_PER_MM, height: height * PX_PER_MM };
  const columnGap = COLUMN_GAP * PX_PER_MM;
  const gaps = (columns - 1) * columnGap;
  const columnWidth = Math.floor((page.width - 2 * MARGIN.side * PX_PER_MM - gaps) / columns);
  return {
    paper,
    columns,
    page,
    top: MARGIN.top * PX_PER_MM,
    side: (page.width - columns * columnWidth - gaps) / 2,
    columnGap,
    columnWidth,
    columnHeight: Math.floor((height - MARGIN.top - MARGIN.bottom) * PX_PER_MM),
  };
}

/** How far from the left edge a column begins, in CSS pixels. */
export const columnLeft = ({ side, columnWidth, columnGap }: Frame, column: number): number =>
  side + column * (columnWidth + columnGap);
