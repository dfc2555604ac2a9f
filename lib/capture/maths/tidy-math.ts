import { MATHML_ELEMENTS } from '../allow-list.ts';
import { MATHML, isElement, rename } from '../dom.ts';

/** Elements whose content is text and nothing else. */
const TOKENS: ReadonlySet<string> = new Set(['mi', 'mn', 'mo', 'ms', 'mtext', 'annotation']);

/**
 * Brings a formula into MathML Core with nothing but MathML and text in it: markup of other kinds inside formulas is
 * of no use here, and a parser may read it differently each time.
 */
export function tidyMath(math: Element): void {
  for (const element of math.querySelectorAll('*')) {
    if (!math.contains(element)) continue;
    if (element.namespaceURI !== MATHML) element.replaceWith(element.textContent);
    else tidyElement(element);
  }
}

function tidyElement(element: Element): void {
  const name = element.localName;
  if (name === 'annotation-xml' || name === 'mglyph' || name === 'malignmark') element.remove();
  else if (name === 'annotation' && !/^application\/x-tex$/i.test(element.getAttribute('encoding') ?? ''))
    element.remove();
  else if (TOKENS.has(name)) element.replaceChildren(element.textContent);
  else if (name === 'maction') element.replaceChildren(...[...element.children].slice(0, 1));
  else if (name === 'mfenced') writeFences(element);
  else if (name === 'mlabeledtr') element.append(...[...element.children].slice(0, 1));
  // A row stands for anything unknown, since the number of parts matters to the element around it.
  if (name === 'mlabeledtr') rename(element, 'mtr');
  else if (name === 'math' || !MATHML_ELEMENTS.has(name)) if (element.parentNode) rename(element, 'mrow');
}

/** Writes out the brackets and commas that the outdated <mfenced> leaves to its attributes. */
function writeFences(fenced: Element): void {
  const sign = (text: string): Element => {
    const operator = fenced.ownerDocument.createElementNS(MATHML, 'mo');
    operator.textContent = text;
    return operator;
  };
  const separators = [...(fenced.getAttribute('separators') ?? ',').replace(/\s+/g, '')];
  const parts = [...fenced.childNodes].filter(isElement);
  const written = parts.flatMap((part, index) => {
    const separator = separators[Math.min(index, separators.length) - 1] ?? separators.at(-1);
    return index > 0 && separator ? [sign(separator), part] : [part];
  });
  fenced.replaceChildren(
    sign(fenced.getAttribute('open') ?? '('),
    ...written,
    sign(fenced.getAttribute('close') ?? ')'),
  );
}
