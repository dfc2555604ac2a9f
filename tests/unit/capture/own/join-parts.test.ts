// @vitest-environment jsdom
import { expect, test } from 'vitest';
import { countParts, joinParts } from '#lib/capture/own/join-parts.ts';

const img = (number: number, alt = 'x') => `<p><img data-picture="${number}" alt="${alt}"></p>`;

test('pieces stand one below the other, their pictures numbered anew', () => {
  const [part, ...none] = joinParts(
    [
      { html: `<p>a</p>${img(0)}`, pictures: ['A'] },
      { html: img(1) + img(0, 'gone'), pictures: [null, 'C'] },
    ],
    false,
    document,
  );
  expect(none).toEqual([]);
  expect(part!.pictures).toEqual(['A', 'C']);
  expect(part!.html).toBe(`<p>a</p>${img(0)}${img(1)}<p>gone</p>`);
});

test('cut at the highest headings of which there are two, each part with its own pictures', () => {
  const html = `<h1>Title</h1><p>first</p><h2>One</h2>${img(0)}<h3>a</h3><p>b</p><h2>Two</h2><p>c</p>${img(1)}`;
  expect(countParts([html], document)).toBe(3);
  const parts = joinParts([{ html, pictures: ['A', 'B'] }], true, document);
  expect(parts.map(({ heading, pictures }) => [heading, pictures])).toEqual([
    ['Title', []],
    ['One', ['A']],
    ['Two', ['B']],
  ]);
  expect(parts[2]!.html).toBe(`<h2>Two</h2><p>c</p>${img(0)}`);
  expect(parts.map(({ html }) => html).join('')).toContain('<h3>a</h3><p>b</p>');
});

test('a heading above another begins no part of its own, and without two headings nothing is cut', () => {
  expect(countParts(['<h2>One</h2><h2>Two</h2><p>a</p><h2>Three</h2><p>b</p>'], document)).toBe(2);
  expect(countParts(['<h1>Title</h1><p>a</p>'], document)).toBe(1);
  expect(countParts(['<p>a</p>', '<h2>x</h2><p>b</p>', '<h2>y</h2><p>c</p>'], document)).toBe(3);
});

test('more pictures than a clip holds are refused, not dropped', () => {
  const html = Array.from({ length: 21 }, (_, i) => img(i)).join('');
  const pictures = Array.from({ length: 21 }, (_, i) => `${i}`);
  expect(() => joinParts([{ html, pictures }], false, document)).toThrow('errorOwnPictures');
});
