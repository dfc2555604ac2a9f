/** What of a drawing's look may come from the page's style sheets. */
const LOOK = (
  'fill fill-opacity fill-rule stroke stroke-width stroke-opacity stroke-dasharray stroke-linecap stroke-linejoin ' +
  'opacity color display visibility font-family font-size font-style font-weight letter-spacing text-anchor ' +
  'dominant-baseline marker-start marker-mid marker-end stop-color stop-opacity transform transform-origin'
).split(' ');

const MOST_PARTS = 2000;

/**
 * A drawing in the page as the data URL of a drawing on its own, with the look that the page gives it. Null where it
 * would not look the same.
 */
export function svgAddress(svg: Element, view: Window): string | null {
  const parts = svg.querySelectorAll('*');
  if (parts.length > MOST_PARTS || svg.querySelector('foreignObject, image')) return null;
  for (const use of svg.querySelectorAll('use')) {
    const target = use.getAttribute('href') ?? use.getAttribute('xlink:href') ?? '';
    if (!/^#[\w-]+$/.test(target) || !svg.querySelector(target)) return null;
  }
  const inert = svg.ownerDocument.implementation.createHTMLDocument('');
  const copy = inert.importNode(svg, true) as SVGElement;
  const copies = copy.querySelectorAll<SVGElement>('*');
  dress(svg, copy, view);
  parts.forEach((part, index) => dress(part, copies[index]!, view));
  const { width, height } = svg.getBoundingClientRect();
  copy.setAttribute('width', String(width));
  copy.setAttribute('height', String(height));
  // Turned or moved, it is drawn upright and whole all the same.
  copy.style.transform = 'none';
  const markup = new (view as Window & typeof globalThis).XMLSerializer().serializeToString(copy);
  return `data:image/svg+xml,${encodeURIComponent(markup)}`;
}

function dress(part: Element, copy: SVGElement, view: Window): void {
  const style = view.getComputedStyle(part);
  for (const name of LOOK) copy.style.setProperty(name, style.getPropertyValue(name));
}
