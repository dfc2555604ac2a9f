import katex from 'katex';
import type { Random } from '#tests/bench/random.ts';
import { isMark } from './passages.ts';

/** What may befall a page between clipping and coming back. */
export interface Edit {
  doc: Document;
  random: Random;
  /** Paragraphs of other pages, to be put in. */
  strangers: readonly string[];
}

const SILENT = 'script, style, title';
const WORD = /\p{L}{2,}/gu;

function textsOf(doc: Document, outside: string): Text[] {
  const walker = doc.createTreeWalker(doc.body, 4);
  const texts: Text[] = [];
  for (let node = walker.nextNode() as Text | null; node; node = walker.nextNode() as Text | null)
    if (!isMark(node) && !node.parentElement!.closest(outside)) texts.push(node);
  return texts;
}

/** One word in twenty becomes another word of the page. */
export function changeWords({ doc, random }: Edit): void {
  const texts = textsOf(doc, `${SILENT}, pre, .math`);
  const words = texts.flatMap(({ data }) => data.match(WORD) ?? []);
  for (const text of texts)
    text.data = text.data.replace(WORD, (word) => (random.next() < 0.05 ? random.pick(words) : word));
}

/** Paragraphs come and go around passages. */
export function changeParagraphs({ doc, random, strangers }: Edit): void {
  const stranger = () => {
    const paragraph = doc.createElement('p');
    paragraph.textContent = random.pick(strangers);
    return paragraph;
  };
  const hasMark = (element: Element) => /[\ue000\ue001]/.test(element.textContent ?? '');
  for (const paragraph of doc.querySelectorAll('p')) {
    if (!hasMark(paragraph)) {
      if (random.next() < 0.3) paragraph.remove();
      continue;
    }
    if (random.next() < 0.5) paragraph.before(stranger(), '\n');
    if (random.next() < 0.5) paragraph.after('\n', stranger());
    const next = paragraph.nextElementSibling;
    if (next?.matches('div, ul, ol') && !hasMark(next) && random.next() < 0.3) next.remove();
  }
}

/** Elements are wrapped, renamed and taken out, text nodes cut, white space and ids changed; the words stay. */
export function changeMarkup({ doc, random }: Edit): void {
  for (const element of doc.querySelectorAll('p, em, strong, code, span:not(.math), section, dl')) {
    if (element.closest('.math') || random.next() > 0.3) continue;
    if (element.matches('p, section, dl')) replaceBy(element, doc.createElement('div'));
    else element.replaceWith(...element.childNodes);
  }
  for (const element of doc.querySelectorAll('[id]')) if (random.next() < 0.5) element.removeAttribute('id');
  for (const text of textsOf(doc, SILENT)) {
    changeSpace(text, random);
    if (text.length > 8 && random.next() < 0.3) {
      const rest = text.splitText(1 + random.below(text.length - 2));
      const wrapper = doc.createElement(random.pick(['span', 'em', 'b', 'a']));
      rest.replaceWith(wrapper);
      wrapper.append(rest);
    }
  }
}

function replaceBy(element: Element, other: Element): void {
  other.append(...element.childNodes);
  element.replaceWith(other);
}

function changeSpace(text: Text, random: Random): void {
  if (text.data.trim() === '' && text.parentElement!.matches('div, section, dl, ul, ol, body')) {
    text.data = random.pick(['', '\n', '\n\n      ']);
    return;
  }
  text.data = text.data.replace(/\s+/g, (space) =>
    random.next() < 0.2 ? random.pick([' ', '\n    ']) : space,
  );
}

const LETTERS = 'abcdefghijklmnopqrstuvwxyz';

/** One character in ten is altered: most become another letter, some are lost or doubled. */
export function changeCharacters({ doc, random }: Edit): void {
  for (const text of textsOf(doc, SILENT)) {
    text.data = text.data.replace(/\S/gu, (character) => {
      if (random.next() >= 0.1) return character;
      const kind = random.next();
      if (kind < 1 / 6) return '';
      return kind < 1 / 3 ? character + character : random.pick([...LETTERS]);
    });
  }
}

/** Formulas that are plain TeX become what KaTeX makes of them. */
export function typeset(doc: Document): void {
  for (const element of doc.querySelectorAll('.math')) {
    const tex = /^\s*\\[([]([\s\S]*)\\[)\]]\s*$/.exec(element.textContent ?? '')?.[1];
    if (tex) element.innerHTML = katex.renderToString(tex, { throwOnError: false });
  }
}

/** The passages themselves are taken out. */
export function removePassages(doc: Document): void {
  for (const paragraph of doc.querySelectorAll('p'))
    if (/[\ue000\ue001]/.test(paragraph.textContent ?? '')) paragraph.remove();
}
