// @vitest-environment jsdom
import { expect, test } from 'vitest';
import { allowOnly, serialise } from '#lib/capture/allow-only.ts';
import { completeMaths } from '#lib/capture/maths/complete-maths.ts';
import { readRange } from '#lib/capture/read-selection.ts';
import corpus from '#tests/data/formulas.json' with { type: 'json' };
import { rangeOver, show } from '../select.ts';

const { formulas } = corpus;

const completed = (html: string): string => completeMaths({ text: 'a', html }).html;
const half = (tex: string): string =>
  `<math><semantics><mtext>${tex}</mtext><annotation encoding="application/x-tex">${tex}</annotation></semantics></math>`;

test('TeX gets its MathML, and the rest of the passage stays as it is', () => {
  expect(completed(`<p>so ${half('a^2')} holds</p>`)).toBe(
    '<p>so <math><semantics><msup><mi>a</mi><mn>2</mn></msup>' +
      '<annotation encoding="application/x-tex">a^2</annotation></semantics></math> holds</p>',
  );
});

test('MathML gets its TeX', () => {
  expect(completed('<p><math display="block"><mi>a</mi><mo>=</mo><mi>b</mi></math></p>')).toBe(
    '<p><math display="block"><semantics><mrow><mi>a</mi><mo>=</mo><mi>b</mi></mrow>' +
      '<annotation encoding="application/x-tex">a = b</annotation></semantics></math></p>',
  );
});

test('displayed formulas stay displayed', () => {
  expect(completed(half('a^2').replace('<math>', '<math display="block">'))).toMatch(
    /^<math display="block">/,
  );
});

test('letters of an alphabet are written in full', () => {
  expect(completed('<math><mi mathvariant="script">L</mi><mi mathvariant="normal">d</mi></math>')).toContain(
    '<mi>ℒ</mi><mi mathvariant="normal">d</mi>',
  );
});

test.each([
  ['both halves are there', completed('<math><mi>a</mi></math>')],
  ['words in place of a formula', '<math><mtext>a squared</mtext></math>'],
  ['TeX that is not known', half('\\nosuchcommand')],
  ['nothing', '<math></math>'],
  ['no formula', '<p>a &lt; b</p>'],
])('%s: stays as it is', (_what, html) => {
  expect(completed(html)).toBe(html);
});

test('what is read from a page and completed is as clean as before', () => {
  const images = formulas.map(({ tex }) => {
    const image = document.createElement('img');
    image.className = 'tex';
    image.alt = tex;
    return `<p>so ${image.outerHTML} holds</p>`;
  });
  for (let from = 0; from < 60; from += 10) {
    show(`<main>${images.slice(from, from + 10).join('')}</main>`);
    const { passage } = readRange(document, rangeOver('main'));
    const whole = completeMaths(passage);
    expect(whole.html).not.toBe(passage.html);
    expect(whole.text).toBe(passage.text);
    expect(serialise(allowOnly(whole.html, document))).toBe(whole.html);
  }
});

test('a passage that would grow too long stays as it is', () => {
  const html = `<p>${'a'.repeat(1_499_900)}${half('a^2')}</p>`;
  expect(completed(html)).toBe(html);
});
