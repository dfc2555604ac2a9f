import { MATHML, carry, moveChildren } from '../dom.ts';
import { readDrawing } from './drawing-reader.ts';
import { drawnText } from './drawn-text.ts';
import { FORMULA, TEX_SCRIPT, scriptBehind } from './formula.ts';
import { texOfImage } from './image-tex.ts';
import { parseMarkup } from '../markup.ts';

const TEX = 'application/x-tex';

/** Containers whose formula stands on its own line. */
const DISPLAYED = '.katex-display, .MathJax_Display, .MJXc-display, .MathJax_SVG_Display, [display="true"]';

/**
 * Replaces what typesetters left for each formula (MathML in the page, KaTeX, MathJax 2 to 4, MediaWiki, pictures with
 * TeX as their text) by one clean <math>, displayed or inline, with its TeX in an annotation where that is known. Where
 * no MathML can be had or rebuilt, the <math> holds the TeX, the spoken form or the visible characters as text, until
 * it is completed (./complete-maths.ts). To run before anything drops scripts, in a document without a view.
 */
export function convertMaths(root: DocumentFragment | Element): void {
  for (const element of root.querySelectorAll('.MathJax_Preview')) element.remove();
  for (const element of root.querySelectorAll(FORMULA)) {
    // An inner element of a formula that has been replaced already.
    if (element.parentElement?.closest(FORMULA) || !root.contains(element)) continue;
    if (element.localName === 'img') {
      const image = texOfImage(element);
      const tex = trimTex(image?.tex);
      if (image && tex) element.replaceWith(mathOfText(element.ownerDocument, tex, tex, image.block));
      continue;
    }
    const script = scriptBehind(element);
    const math = readFormula(element, script);
    script?.remove();
    if (math) element.replaceWith(math);
    else element.remove();
  }
  for (const script of root.querySelectorAll(TEX_SCRIPT)) {
    const math = readFormula(script, script);
    if (math) script.replaceWith(math);
  }
}

/** The formula's TeX, from its annotation or from what MathJax notes beside it; null where none is known. */
export function texOf(math: Element): string | null {
  const note = math.querySelector(`annotation[encoding="${TEX}" i]`);
  return trimTex(note ? note.textContent : math.getAttribute('data-latex'));
}

/** MediaWiki sets every formula's TeX in a display style group of its own. */
function trimTex(tex: string | null | undefined): string | null {
  const bare = (tex ?? '').trim();
  return (/^\{\\displaystyle\s([\s\S]*)\}$/.exec(bare)?.[1] ?? bare).trim() || null;
}

function readFormula(element: Element, script: Element | null): Element | null {
  const block = isDisplayed(element, script);
  const found = mathIn(element);
  const tex = texNear(element, found, script);
  if (found) return cleanMath(found, tex, block || found.getAttribute('display') === 'block');
  const rebuilt = readDrawing(element);
  if (rebuilt) return mathOf(rebuilt, tex, block);
  const text = tex ?? (noteIn(element, 'aria-label')?.trim() || visible(element));
  return text ? mathOfText(element.ownerDocument, text, tex, block) : null;
}

function isDisplayed(element: Element, script: Element | null): boolean {
  if (element.matches(DISPLAYED) || element.querySelector(DISPLAYED)) return true;
  return script !== null && isDisplayScript(script);
}

function isDisplayScript(script: Element): boolean {
  return /mode\s*=\s*display/.test(script.getAttribute('type') ?? '');
}

/** The TeX from the MathML, from the script behind, or from what MathJax 4 notes on each part, the whole first. */
function texNear(element: Element, found: Element | null, script: Element | null): string | null {
  return (
    (found && (texOf(found) ?? trimTex(texAlternative(found)))) ??
    (script && trimTex(script.textContent)) ??
    trimTex(noteIn(element, 'data-latex'))
  );
}

/** What an attribute of the element says, or of the first in it that has the attribute. */
function noteIn(element: Element, name: string): string | null | undefined {
  return element.getAttribute(name) ?? element.querySelector(`[${name}]`)?.getAttribute(name);
}

/** The MathML of a formula: itself, its assistive copy, or what MathJax 2 keeps in an attribute. */
function mathIn(element: Element): Element | null {
  if (element.localName === 'math') return element;
  const inside = element.querySelector('math');
  const source = inside ? null : noteIn(element, 'data-mathml');
  return source ? (parseMarkup(source, element.ownerDocument)?.querySelector('math') ?? null) : inside;
}

/** `alttext` holds TeX on many pages, but prose on others. */
function texAlternative(math: Element): string | null {
  const text = math.getAttribute('alttext');
  return text && /[\\^_{]/.test(text) ? text : null;
}

/** The characters drawn. */
function visible(element: Element): string {
  return drawnText(element.querySelector('.katex-html') ?? element)
    .normalize('NFKC')
    .replace(/[\u200b\s]+/g, ' ')
    .trim();
}

/** A <math> of its own with the content of `source`, the TeX as annotation, and no attribute but `display` and `dir`. */
function cleanMath(source: Element, tex: string | null, block: boolean): Element {
  const doc = source.ownerDocument;
  const math = emptyMath(doc, block);
  carry(source, math, ['dir']);
  const content = source.querySelector(':scope > semantics')?.firstElementChild;
  const row = doc.createElementNS(MATHML, 'mrow');
  if (content) row.append(content);
  else moveChildren(source, row);
  if (tex === null) moveChildren(row, math);
  else math.append(annotated(row.children.length === 1 ? row.firstElementChild! : row, tex));
  return math;
}

function mathOfText(doc: Document, text: string, tex: string | null, block: boolean): Element {
  const token = doc.createElementNS(MATHML, 'mtext');
  token.textContent = text;
  return mathOf(token, tex, block);
}

function mathOf(content: Element, tex: string | null, block: boolean): Element {
  const math = emptyMath(content.ownerDocument, block);
  math.append(tex === null ? content : annotated(content, tex));
  return math;
}

function emptyMath(doc: Document, block: boolean): Element {
  const math = doc.createElementNS(MATHML, 'math');
  if (block) math.setAttribute('display', 'block');
  return math;
}

function annotated(content: Element, tex: string): Element {
  const doc = content.ownerDocument;
  const semantics = doc.createElementNS(MATHML, 'semantics');
  const note = doc.createElementNS(MATHML, 'annotation');
  note.setAttribute('encoding', TEX);
  note.textContent = tex;
  semantics.append(content, note);
  return semantics;
}
