import { isPicturePlace } from './allow-list.ts';
import { isBlank, isElement, isText, rename, unwrap } from './dom.ts';
import { tidyMath } from './maths/tidy-math.ts';

/** Gone with all that is in it: code, embedded things, controls, ways around the site, what is not shown. */
const DROPPED = [
  'script, style, noscript, noembed, noframes, template, svg, canvas, iframe, object, embed, audio, video, map',
  'head, title, link, meta, base',
  'nav, [role="navigation"], button, input, select, textarea, datalist, meter, progress, rp',
  '[hidden], [aria-hidden="true" i], [style*="display:none" i], [style*="display: none" i]',
].join(', ');

/** Names that became others, or that say the same as one on the allow-list. */
const RENAMED: Readonly<Record<string, string>> = {
  del: 's',
  strike: 's',
  ins: 'u',
  tt: 'code',
  acronym: 'abbr',
  menu: 'ul',
  dir: 'ul',
  bdi: 'span',
  bdo: 'span',
};

/** Containers that stand as a block but say nothing that a passage needs. */
const CONTAINER =
  'div, section, article, main, header, footer, aside, address, details, summary, fieldset, legend, form, center, ' +
  'hgroup, search, dialog';

const BLOCK = `${CONTAINER}, p, hr, h1, h2, h3, h4, h5, h6, ul, ol, li, dl, dt, dd, table, blockquote, pre, figure, figcaption`;

/** Elements in which a lone paragraph says no more than its text. */
const HOLDER = 'li, dd, dt, td, th, figcaption, caption, p, h1, h2, h3, h4, h5, h6';

/**
 * Brings markup from anywhere into the shapes of the allow-list while the meaning is still there to read: containers
 * become paragraphs, pictures that are not kept their alternative text, outdated names the present ones. Safety is not its job.
 */
export function tidy(root: DocumentFragment | Element): void {
  // A control named after a method of its form would stand in that method's place.
  for (const named of root.querySelectorAll('[name]:not(form)')) named.removeAttribute('name');
  for (const named of root.querySelectorAll('[id]:not(form)')) named.removeAttribute('id');
  for (const element of root.querySelectorAll(DROPPED)) element.remove();
  writeOutImages(root);
  // Readings of CJK characters follow them in brackets.
  for (const reading of root.querySelectorAll('rt')) reading.replaceWith(`(${reading.textContent.trim()})`);
  for (const old of root.querySelectorAll(Object.keys(RENAMED).join(', '))) {
    const name = RENAMED[old.localName];
    if (name) rename(old, name);
  }
  // The name of a customised element outlives its attribute; only a new element is without it.
  for (const element of root.querySelectorAll('[is]')) rename(element, element.localName);
  for (const math of root.querySelectorAll('math')) tidyMath(math);
  // Inner ones first, so that a container knows what its content has become.
  for (const container of [...root.querySelectorAll(CONTAINER)].reverse()) flatten(container);
  for (const span of root.querySelectorAll('span:not([lang], [dir])')) unwrap(span);
  for (const pre of root.querySelectorAll('pre')) trimFirstLine(pre);
}

/** In the place of each image that is not kept as a picture stands what it says in words. */
function writeOutImages(root: ParentNode): void {
  for (const image of root.querySelectorAll('img')) {
    if (!isPicturePlace(image)) image.replaceWith(image.getAttribute('alt')?.trim() ?? '');
  }
}

function flatten(container: Element): void {
  if (container.querySelector(BLOCK)) {
    wrapLoose(container, 'p', BLOCK);
    unwrap(container);
  } else if (isBlank(container)) {
    container.replaceWith(' ');
  } else if (isAlone(container)) {
    unwrap(container);
  } else {
    rename(container, 'p');
  }
}

function isAlone(element: Element): boolean {
  const parent = element.parentElement;
  return (
    !!parent?.matches(HOLDER) && [...parent.childNodes].every((node) => node === element || isBlank(node))
  );
}

/**
 * Puts each run of loose inline content among the children of `root` into an element of its own.
 *
 * @param blocks selector of the elements that end a run, as does an element that holds one
 */
export function wrapLoose(root: DocumentFragment | Element, name: string, blocks: string = BLOCK): void {
  let run: Node[] = [];
  const close = (): void => {
    const [first] = run;
    if (first?.parentNode && !run.every(isBlank)) {
      const wrapper = first.ownerDocument!.createElement(name);
      first.parentNode.insertBefore(wrapper, first);
      for (const node of run) wrapper.append(node);
    }
    run = [];
  };
  for (const node of [...root.childNodes]) {
    if (isElement(node) && (node.matches(blocks) || node.querySelector(blocks))) close();
    else run.push(node);
  }
  close();
}

/** A parser drops the first line end in <pre>; without it, storing and reading back changes nothing. */
function trimFirstLine(pre: Element): void {
  for (let first = pre.firstChild; isText(first) && first.data.startsWith('\n'); first = pre.firstChild) {
    first.data = first.data.replace(/^\n+/, '');
    if (first.data === '') first.remove();
  }
}
