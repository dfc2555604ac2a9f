import { readSpecification } from '#lib/syllabus/bring-in/specification/read-specification.ts';
import { parentsOf } from '#lib/syllabus/outline/kinds.ts';
import {
  PLAIN,
  type SpecEntry,
  type SpecStyle,
  makeOutline,
  writeSpecification,
} from '#tests/tools/demo/pdfs/specification.ts';
import { pagesOfPdf } from './pages-of-pdf.ts';

/** The ways in which the made specifications are set. */
export const STYLES: [name: string, over: Partial<SpecStyle>][] = [
  ['as exam boards set it', {}],
  ['bound, with margins that differ', { binding: 22 }],
  ['numbered (a) and iv below 1.1', { numbering: 'mixed' }],
  ['numbered, with bullets below', { numbering: 'bullets' }],
  ['in one size, by number and indent', { sized: false }],
  ['not set in, by number and size', { indented: false }],
  ['by number alone', { indented: false, sized: false }],
  ['without numbers, by size and indent', { numbering: 'none' }],
  ['without explanations', { prose: false }],
];

/** How many lines each has. */
const LINES = 200;

/** Each line with the line it stands under: what "in the right place" means. A bullet is no code. */
const places = (rows: readonly SpecEntry[]): string[] => {
  const name = (row: SpecEntry | undefined) =>
    row ? `${row.code} ${row.text}`.replace('• ', ' ') : 'the top';
  return parentsOf(rows).map((parent, i) => `${name(rows[i])} < ${name(rows[parent])}`);
};

/** The part of an outline's lines that come back from its PDF whole, with their codes, under the right line. */
export async function specComesBack(over: Partial<SpecStyle>, seed: number) {
  const style = { ...PLAIN, ...over };
  const outline = makeOutline(LINES, style.numbering, seed);
  const { rows, courseName } = readSpecification(await pagesOfPdf(writeSpecification(outline, style)));
  const found = new Set(places(rows));
  const wanted = places(outline);
  const missed = wanted.filter((one) => !found.has(one));
  return { part: 1 - missed.length / wanted.length, missed, extra: rows.length - outline.length, courseName };
}
