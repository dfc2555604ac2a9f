// @vitest-environment jsdom
import fc from 'fast-check';
import { expect, test } from 'vitest';
import { ownPassage, readPasted, typedHtml } from '#lib/capture/own/own-passage.ts';
import { passageOfMarkdown } from '#lib/exchange/markdown/to-passage.ts';
import { splitTex } from '#lib/notes/split-tex.ts';

const SIGNS = (
  '* ** _ # ## [ ] ( ) < > ` ``` \\ ! | ~~ $ $$ \\( \\) \\[ \\] & ; : — - + = 1. - > --- <b> </b> <sub> </sub> <!-- --> ' +
  '😀 שלום \u202e \u200f % { } ^ @ [a]: http://127.0.0.1/x $x^2$ \\(\\frac{1}{\\) \\[y\\] &amp; | a | --- |'
).split(' ');
const token = fc.oneof(
  { weight: 3, arbitrary: fc.constantFrom(...SIGNS, ' ', '\n', '\n\n', '\n- ', '\n# ', '\t', '    ') },
  { weight: 2, arbitrary: fc.nat(99).map((number) => ` w${number}w `) },
);
const typed = fc.array(token, { maxLength: 25 }).map((parts) => parts.join(''));

/** The words and formulas of a text without white space. */
const said = (text: string): string =>
  JSON.stringify(
    splitTex(text)
      .map((piece) => (piece.kind === 'words' ? piece.text : `(${piece.tex})`))
      .join('')
      .replace(/\s+/g, ''),
  );
const textOf = (html: string) => ownPassage(html, document).text;

test('typed text is kept to the last sign', () => {
  fc.assert(
    fc.property(typed, (text) => {
      expect(said(textOf(typedHtml(text, document)))).toBe(said(text));
    }),
    { numRuns: 120 },
  );
});

test('of Markdown, signs become form, and every word stays in its order', () => {
  fc.assert(
    fc.property(typed, (text) => {
      const words = (all: string) => all.match(/w\d+w/g) ?? [];
      expect(words(textOf(passageOfMarkdown(text, document).html))).toEqual(words(text));
    }),
    { numRuns: 120 },
  );
});

test('cleaning pasted markup again changes nothing', () => {
  fc.assert(
    fc.property(typed, (markup) => {
      const { html } = readPasted(markup, document);
      expect(readPasted(html, document).html).toBe(html);
    }),
    { numRuns: 30 },
  );
});
