import { isElement, isText } from './dom.ts';
import { linearMaths } from './maths/linear-maths.ts';
import { texOf } from './maths/convert-maths.ts';
import { TextWriter } from './text-writer.ts';

const BLOCK =
  'p, h1, h2, h3, h4, h5, h6, dl, dt, dd, blockquote, pre, figure, figcaption, caption, table, hr, div, section';

/** A power or a unit's exponent. Ordinals and the like ("1st") stay as they are. */
const EXPONENT = /^[-+\u2212]?\d+$/;

/**
 * The text of a cleaned passage as it is read: white space as a browser shows it, blocks and table rows on lines of
 * their own, cells apart by tabs, list items with "- " or "1. " in front, and each formula once: as TeX between \( \)
 * (displayed: \[ \]) where that is known, else in a linear form such as (a)/(b). A superscript number reads ^2.
 */
export function plainText(fragment: DocumentFragment | Element): string {
  const writer = new TextWriter();
  writeChildren(fragment, writer);
  return writer.finish();
}

function writeChildren(parent: Node, writer: TextWriter): void {
  for (let node = parent.firstChild; node; node = node.nextSibling) {
    writeNode(node, writer);
  }
}

function writeNode(node: Node, writer: TextWriter): void {
  if (isText(node)) writer.text(node.data);
  else if (isElement(node)) writeElement(node, writer);
}

function writeElement(element: Element, writer: TextWriter): void {
  switch (element.localName) {
    case 'math':
      return writeFormula(element, writer);
    case 'img':
      // Of a picture, what it says in words.
      return writer.text(element.getAttribute('alt') ?? '');
    case 'br':
      return writer.newLine();
    case 'ul':
    case 'ol':
      return writer.block(() => writeList(element, writer));
    case 'li':
      return writer.item('- ', () => writeChildren(element, writer));
    case 'tr':
      return writeRow(element, writer);
    case 'pre':
      return writer.block(() => writer.verbatim(() => writeChildren(element, writer)));
    case 'sup':
      if (EXPONENT.test(element.textContent.trim())) writer.text('^');
      return writeChildren(element, writer);
    case 'q':
      writer.text('\u201c');
      writeChildren(element, writer);
      return writer.text('\u201d');
    default:
      if (element.matches(BLOCK)) writer.block(() => writeChildren(element, writer));
      else writeChildren(element, writer);
  }
}

function writeFormula(math: Element, writer: TextWriter): void {
  const tex = texOf(math)?.replace(/\s+/g, ' ');
  if (math.getAttribute('display') === 'block') {
    writer.block(() => writer.text(tex ? `\\[ ${tex} \\]` : linearMaths(math)));
  } else {
    writer.text(tex ? `\\( ${tex} \\)` : linearMaths(math));
  }
}

function writeRow(row: Element, writer: TextWriter): void {
  const cells = [...row.children].map((cell) => plainText(cell).replace(/\s+/g, ' '));
  if (cells.some((cell) => cell !== '')) writer.block(() => writer.exact(cells.join('\t')));
}

/** List items numbered from the list's start, or from the value that one of them sets. */
function writeList(list: Element, writer: TextWriter): void {
  const ordered = list.localName === 'ol';
  let number = Number(list.getAttribute('start') ?? 1);
  for (const node of list.childNodes) {
    if (!isElement(node) || node.localName !== 'li') {
      writeNode(node, writer);
      continue;
    }
    number = Number(node.getAttribute('value') ?? number);
    writer.item(ordered ? `${number}. ` : '- ', () => writeChildren(node, writer));
    number++;
  }
}
