import { MATHML_ELEMENTS } from '../allow-list.ts';
import { MATHML } from '../dom.ts';
import { markupOf } from '../markup.ts';
import type { DrawingReader } from './drawing-reader.ts';
import { drawnText } from './drawn-text.ts';
import { fromItalic } from './from-italic.ts';

/** Parts of a drawing that stand beside the formula or draw a sign that the element says already. */
const BESIDE = 'mjx-surd, mjx-labels, [data-labels], mjx-break';

/**
 * What <math> would hold for a formula that MathJax 3 or 4 has drawn (in HTML or SVG) and of which it left no MathML:
 * rebuilt from the names it gives to the parts. Null where nothing is drawn, or a part is not understood.
 */
export const readDrawing: DrawingReader = (container) => {
  // Version 4 parts a long formula where a line may break.
  const tops = [...container.querySelectorAll('mjx-math, [data-mml-node="math"]')];
  return tops[0] ? row(container, tops) : null;
};

/** The MathML element that a part of the drawing stands for; '' for what only holds others. */
function nameOf(element: Element): string {
  const name = (element.getAttribute('data-mml-node') ?? element.localName.replace('mjx-', '')).toLowerCase();
  // Limits above and below are drawn with a helper of a real element's name.
  if (element.matches('mjx-box > mjx-munder')) return '';
  return MATHML_ELEMENTS.has(name) || /^(texatom|menclose|mlabeledtr)$/.test(name) ? name : '';
}

function kidsOf(element: Element): Element[] {
  return [...element.children].flatMap((child) =>
    child.matches(BESIDE) ? [] : nameOf(child) ? [child] : kidsOf(child),
  );
}

function build(element: Element): Element | null {
  const name = nameOf(element);
  const kids = kidsOf(element);
  if (/^m([inos]|text)$/.test(name)) return token(element, name);
  if (/^m(sub|sup|under|over)/.test(name)) return kids[1] ? make(element, name, scripts(kids)) : null;
  if (/root|sqrt/.test(name)) return root(element, name, kids);
  if (name === 'mmultiscripts') return null;
  if (!/^m(table|labeledtr|tr|td|phantom|space|frac)$/.test(name)) return row(element, kids);
  const made = make(element, name.replace('labeled', ''), kids);
  if (name === 'mfrac' && !element.querySelector(':scope > rect, :scope > mjx-frac:not([atop])'))
    made?.setAttribute('linethickness', '0');
  return made;
}

/** Null as soon as one of the parts is. */
function make({ ownerDocument }: Element, name: string, kids: readonly Element[]): Element | null {
  const made = ownerDocument.createElementNS(MATHML, name);
  for (const kid of kids) {
    const part = build(kid);
    if (!part) return null;
    made.append(part);
  }
  return made;
}

function row(element: Element, kids: readonly Element[]): Element | null {
  return kids.length === 1 ? build(kids[0]!) : make(element, 'mrow', kids);
}

/** Base, below, above. In HTML what is above comes first; in SVG the height says which it is. */
function scripts(kids: Element[]): Element[] {
  const base = kids.find((kid) => kid.parentElement?.localName === 'mjx-base') ?? kids[0];
  const marks = kids.filter((kid) => kid !== base);
  const [one = 0, two = 0] = marks.map((kid) =>
    Number(/,([-\d.]+)/.exec(kid.getAttribute('transform') ?? '')?.[1] ?? 0),
  );
  return [base!, ...(one < two ? marks : marks.reverse())];
}

/** In SVG the sign is a part like the index, and what is under it has a holder of its own. */
function root(element: Element, name: string, kids: readonly Element[]): Element | null {
  const outer = kids.filter(
    (kid) => kid.parentNode === element || kid.parentElement?.localName === 'mjx-root',
  );
  const inside = row(
    element,
    kids.filter((kid) => !outer.includes(kid)),
  );
  const made = make(
    element,
    name,
    outer.filter((kid) => nameOf(kid) !== 'mo'),
  );
  if (inside) made?.prepend(inside);
  return inside && made;
}

function token(element: Element, name: string): Element {
  const drawn = drawnText(element);
  const text = name === 'mo' ? joined(drawn, element) : drawn;
  const made = element.ownerDocument.createElementNS(MATHML, name);
  if (name === 'mi' && /^[a-zΑ-ϵ]$/i.test(text)) {
    // A calligraphic letter is told by its font only.
    made.setAttribute('mathvariant', /-CB?["-]/.test(markupOf(element)) ? 'script' : 'normal');
  }
  made.textContent = (name === 'mi' && fromItalic(text)) || text;
  return made;
}

/** The first pieces of signs that are put together from several, each before what they become. */
const PIECES = '⎛(⎞)⎧{⎫}⎡[⎤]⎣⌊⎦⌋\ue150⏞\ue152⏟';

/** A sign that has been stretched, as itself. */
function joined(text: string, element: Element): string {
  const [first = '-'] = text;
  // Without its lower end a square bracket is a ceiling.
  if (/^[⎡⎤][^⎣⎦]*$/.test(text)) return first === '⎡' ? '⌈' : '⌉';
  const at = PIECES.indexOf(first);
  if (at >= 0 && at % 2 === 0) return PIECES[at + 1]!;
  return element.querySelector('svg') ? first : text;
}
