import { MATHML, carry, isElement } from '../dom.ts';
import { FORMULA, TEX_SCRIPT, scriptBehind } from './formula.ts';
import { texOfImage } from './image-tex.ts';
import { parseMarkup } from '../markup.ts';

const TEX = 'application/x-tex';

/** Containers whose formula stands on its own line. */
const DISPLAYED = '.katex-display, .MathJax_Display, .MJXc-display, .MathJax_SVG_Display, [display="true"]';

/**
 * Replaces what typesetters left for each formula (MathML in the page, KaTeX, MathJax 2 to 4, MediaWiki, pictures with
 * TeX as their text) by one clean <math>, displayed or inline, with its TeX in an annotation where that is known. Where
 * no MathML can be had, the <math> holds the TeX, the spoken form or the visible characters as text.
 */
export function convertMaths(root: DocumentFragment | Element): void {
  for (const element of root.querySelectorAll('.MathJax_Preview')) element.remove();
  for (const element of root.querySelectorAll(FORMULA)) {
    // An inner element of a formula that has been replaced already.
    if (element.parentElement?.closest(FORMULA) || !root.contains(element)) continue;
    if (element.localName === 'img') {
      const image = texOfImage(element);
      if (image) element.replaceWith(mathOfText(element.ownerDocument, image.tex, image.tex, image.block));
      continue;
    }
    const script = scriptBehind(element);
    const math = readFormula(element, script);
    script?.remove();
    if (math) element.replaceWith(math);
    else element.remove();
  }
  for (const script of root.querySelectorAll(TEX_SCRIPT)) {
    const { ownerDocument, textContent } = script;
    script.replaceWith(mathOfText(ownerDocument, textContent, textContent, isDisplayScript(script)));
  }
}

/** The formula's TeX, from its annotation or from what MathJax notes beside it; null where none is known. */
export function texOf(math: Element): string | null {
  for (const note of math.querySelectorAll('annotation')) {
    if (note.getAttribute('encoding')?.toLowerCase() === TEX) return trimTex(note.textContent);
  }
  return trimTex(math.getAttribute('data-latex'));
}

/** MediaWiki sets every formula's TeX in a display style group of its own. */
function trimTex(tex: string | null): string | null {
  const bare = (tex ?? '').trim();
  return (/^\{\\displaystyle\s([\s\S]*)\}$/.exec(bare)?.[1] ?? bare).trim() || null;
}

function readFormula(element: Element, script: Element | null): Element | null {
  const block = isDisplayed(element, script);
  const found = mathIn(element);
  const tex = texNear(element, found, script);
  if (found) return cleanMath(found, tex, block || found.getAttribute('display') === 'block');
  const text = tex ?? spoken(element) ?? visible(element);
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
  const noted = element.querySelector('[data-latex]');
  return (
    (found && (texOf(found) ?? trimTex(texAlternative(found)))) ??
    (script && trimTex(script.textContent)) ??
    (noted && trimTex(noted.getAttribute('data-latex')))
  );
}

/** The MathML of a formula: itself, its assistive copy, or what MathJax 2 keeps in an attribute. */
function mathIn(element: Element): Element | null {
  if (element.localName === 'math') return element;
  const inside = element.querySelector('math');
  if (inside) return inside;
  const holder = element.matches('[data-mathml]') ? element : element.querySelector('[data-mathml]');
  const source = holder?.getAttribute('data-mathml');
  if (!source) return null;
  return parseMarkup(source, element.ownerDocument)?.querySelector('math') ?? null;
}

/** `alttext` holds TeX on many pages, but prose on others. */
function texAlternative(math: Element): string | null {
  const text = math.getAttribute('alttext');
  return text && /[\\^_{]/.test(text) ? text : null;
}

function spoken(element: Element): string | null {
  const label =
    element.getAttribute('aria-label') ?? element.querySelector('[aria-label]')?.getAttribute('aria-label');
  return label?.trim() || null;
}

/** The characters drawn. */
function visible(element: Element): string {
  const drawn = element.querySelector('.katex-html') ?? element;
  const text = drawn.textContent.replace(/[\u200b\s]+/g, ' ').trim();
  if (text) return text;
  const codes = [...element.querySelectorAll('mjx-c, [data-c]')].map(
    (glyph) =>
      glyph.getAttribute('data-c') ?? /\bmjx-c([\dA-F]+)\b/.exec(glyph.getAttribute('class') ?? '')?.[1],
  );
  const points = codes.map((code) => parseInt(code ?? '', 16)).filter((point) => point <= 0x10ffff);
  return String.fromCodePoint(...points).normalize('NFKC');
}

/** A <math> of its own with the content of `source`, the TeX as annotation, and no attribute but `display` and `dir`. */
function cleanMath(source: Element, tex: string | null, block: boolean): Element {
  const doc = source.ownerDocument;
  const math = emptyMath(doc, block);
  carry(source, math, ['dir']);
  const semantics = [...source.children].find((child) => child.localName === 'semantics');
  const content = semantics ? semantics.firstElementChild : null;
  const parts = content ? [content] : [...source.childNodes];
  if (tex === null) {
    for (const part of parts) math.append(part);
    return math;
  }
  const only = parts.filter(isElement);
  if (only.length !== 1) {
    const row = doc.createElementNS(MATHML, 'mrow');
    for (const part of parts) row.append(part);
    only.splice(0, only.length, row);
  }
  math.append(annotated(doc, only[0]!, tex));
  return math;
}

function mathOfText(doc: Document, text: string | null, tex: string | null, block: boolean): Element {
  const token = doc.createElementNS(MATHML, 'mtext');
  const source = trimTex(tex);
  token.textContent = source ?? text?.trim() ?? '';
  return mathOf(token, source, block);
}

function mathOf(content: Element, tex: string | null, block: boolean): Element {
  const math = emptyMath(content.ownerDocument, block);
  math.append(tex === null ? content : annotated(content.ownerDocument, content, tex));
  return math;
}

function emptyMath(doc: Document, block: boolean): Element {
  const math = doc.createElementNS(MATHML, 'math');
  if (block) math.setAttribute('display', 'block');
  return math;
}

function annotated(doc: Document, content: Element, tex: string): Element {
  const semantics = doc.createElementNS(MATHML, 'semantics');
  const note = doc.createElementNS(MATHML, 'annotation');
  note.setAttribute('encoding', TEX);
  note.textContent = tex;
  semantics.append(content, note);
  return semantics;
}
