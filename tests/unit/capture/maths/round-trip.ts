import { createRequire } from 'node:module';
import { lendDrawingReader } from '#lib/capture/maths/drawing-reader.ts';
import { readDrawing } from '#lib/capture/maths/drawn-maths.ts';
import { mathmlToTex } from '#lib/capture/maths/mathml-to-tex.ts';
import { normaliseMathml } from '#lib/capture/maths/normalise-mathml.ts';
import { texToMathml } from '#lib/capture/maths/tex-to-mathml.ts';
import { readRange } from '#lib/capture/read-selection.ts';
import { texOf } from '#lib/capture/maths/convert-maths.ts';
import type { Formula } from './typesetters.ts';

// As the script does in a page with formulas that are only drawn.
lendDrawingReader(readDrawing);

/** The part of jsdom that is used here; its package ships no types. */
interface Jsdom {
  JSDOM: new (html: string, options: { url: string }) => { window: Window };
}
const { JSDOM } = createRequire(import.meta.url)('jsdom') as Jsdom;

/** A page of its own. */
export function pageOf(html: string): Document {
  return new JSDOM(`<body>${html}</body>`, { url: 'https://page.invalid/' }).window.document;
}

/** How one formula of a page comes back; null where there was nothing to go by. */
export interface RoundTrip {
  /** Whether the selection has it once, and displayed or inline as the page has it. */
  once: boolean;
  /** Whether its TeX gives the same MathML as the TeX it was made from. */
  tex: boolean | null;
  /** Whether its MathML gives TeX that gives the same MathML. */
  mathml: boolean | null;
  /** The normal form of the MathML that the selection has. */
  normal: string | null;
}

/** Of a formula that did not come along. */
export const LOST: RoundTrip = { once: false, tex: false, mathml: false, normal: null };

/** The normal form of TeX; null for TeX that is not known. */
export function normalOfTex({ tex, display }: Formula): string | null {
  const made = texToMathml({ tex, display });
  return 'mathml' in made ? normaliseMathml(made.mathml) : null;
}

/** How many formulas one page of the test has, in a paragraph each. */
const ON_A_PAGE = 10;

/** From pages that hold the formulas through a selection of all that is there, and back. Null stays null. */
export function roundTrips(
  markup: readonly (string | null)[],
  formulas: readonly Formula[],
): (RoundTrip | null)[] {
  const all = formulas.flatMap((formula, index) => {
    const html = markup[index] ?? null;
    return html === null ? [] : [{ formula, html, index }];
  });
  const results: (RoundTrip | null)[] = formulas.map(() => null);
  for (let from = 0; from < all.length; from += ON_A_PAGE) {
    const page = all.slice(from, from + ON_A_PAGE);
    const paragraphs = selectAll(page.map(({ html }) => `<div>so ${html} holds</div>`).join(''));
    if (paragraphs.length !== page.length)
      throw new Error(`${paragraphs.length} paragraphs of ${page.length}`);
    page.forEach(({ formula, index }, at) => (results[index] = roundTrip(paragraphs[at]!, formula)));
  }
  return results;
}

/** The paragraphs of what is captured when the whole page is selected. */
function selectAll(html: string): Element[] {
  // A page of its own each time: old ranges in a page slow down all that is done in it.
  const doc = pageOf(html);
  const range = doc.createRange();
  range.selectNodeContents(doc.body);
  const { passage } = readRange(doc, range);
  const template = doc.createElement('template');
  template.innerHTML = passage.html;
  return [...template.content.querySelectorAll('p')];
}

function roundTrip(paragraph: Element, formula: Formula): RoundTrip {
  const [math, ...more] = paragraph.querySelectorAll('math');
  if (!math) return LOST;
  const tex = texOf(math);
  math.querySelector('annotation')?.remove();
  const rest = paragraph.textContent.replace(math.textContent, '').replace(/\s+/g, ' ').trim();
  const block = math.getAttribute('display') === 'block';
  const once = more.length === 0 && rest === 'so holds' && block === formula.display;
  const bare = tex !== null && math.textContent === tex;
  const normal = bare ? null : normaliseMathml(math.outerHTML);
  // What shows nothing has no TeX, and no TeX shows nothing.
  const back = bare ? null : (mathmlToTex(math.outerHTML) ?? '');
  return {
    once,
    tex: tex === null ? null : isSame(normalOfTex({ ...formula, tex }), normalOfTex(formula)),
    mathml: bare ? null : isSame(normal, back === null ? null : normalOfTex({ ...formula, tex: back })),
    normal,
  };
}

function isSame(one: string | null, other: string | null): boolean {
  return one !== null && one === other;
}

/** Whether a formula came back: once, and the same by its TeX and by its MathML, whichever the page had. */
export function cameBack(trip: RoundTrip | null): boolean {
  if (!trip?.once || trip.tex === false || trip.mathml === false) return false;
  return trip.tex !== null || trip.mathml !== null;
}
