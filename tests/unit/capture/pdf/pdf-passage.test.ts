// @vitest-environment jsdom
import { expect, test } from 'vitest';
import { joint, plainLetters } from '#lib/capture/pdf/letters.ts';
import { passageOf } from '#lib/capture/pdf/passage.ts';
import type { Piece } from '#lib/capture/pdf/piece.ts';
import { rawText } from '#lib/capture/pdf/selected.ts';
import { aPiece, lines } from './page-of-text.ts';

const read = (pieces: Piece[], pages = rawText(pieces)) => passageOf(pieces, pages, document);
const paragraphs = (pieces: Piece[]) => read(pieces).text.split('\n').filter(Boolean);

test('lines become paragraphs, and a word broken at a line end is whole again', () => {
  const passage = read(
    lines([
      'Surface waves obey a disper-',
      'sion relation between frequency and',
      'wavenumber at any depth.',
    ]),
  );
  expect(passage).toEqual({
    text: 'Surface waves obey a dispersion relation between frequency and wavenumber at any depth.',
    html: '<p>Surface waves obey a dispersion relation between frequency and wavenumber at any depth.</p>',
  });
});

test.each([
  ['a disper-', 'sion relation', '', 'a dispersion relation'],
  ['the deep-', 'water wave', 'of a deep-water wave', 'the deep-water wave'],
  ['the disper\u00ad', 'sion', 'disper\u00ad-sion', 'the dispersion'],
  ['the Navier-', 'Stokes equations', '', 'the Navier- Stokes equations'],
  ['the years 1990-', '2000', '', 'the years 1990- 2000'],
  ['two words ', ' of a line', '', 'two words of a line'],
  ['海の', '波', '', '海の波'],
])('“%s” and “%s” are joined', (end, start, known, joined) => {
  const { drop, add } = joint(end, start, known);
  expect(end.slice(0, end.length - drop) + add + start.trimStart()).toBe(joined);
});

test('ligatures are letters, accents are composed, and nothing unprintable stays', () => {
  expect(plainLetters('\ufb01nite \ufb02ow e\ufb03cient o\ufb00 e\u0301\u0007\u00a0x\ufffd')).toBe(
    'finite flow efficient off é x',
  );
});

test('raised and lowered letters are told as such', () => {
  const part = (text: string, left: number, over: Partial<Piece> = {}) =>
    aPiece(text, { left, endsLine: false, ...over });
  const passage = read([
    part('ω', 50),
    part('2', 56, { size: 7, baseline: 96 }),
    part(' ', 60, { size: 7, baseline: 96 }),
    part('= gk at T', 62),
    part('0', 110, { size: 7, baseline: 102 }),
    part(' and on', 115, { endsLine: true }),
  ]);
  expect(passage.html).toBe('<p>ω<sup>2</sup> = gk at T<sub>0</sub> and on</p>');
  expect(passage.text).toBe('ω^2 = gk at T0 and on');
});

test('a gap, another size, an indent or a label parts paragraphs', () => {
  const body = 'A full line of body text that reaches the edge';
  expect(
    paragraphs([
      ...lines(['Heading'], { size: 14, baseline: 80 }),
      ...lines([body, body], { baseline: 100 }),
      ...lines([body, body], { baseline: 140 }),
      ...lines([`Indented ${body}`.slice(0, body.length - 3)], { baseline: 165, left: 65 }),
      ...lines(['1. First', '2. Second'], { baseline: 177.5 }),
    ]),
  ).toEqual([
    'Heading',
    `${body} ${body}`,
    `${body} ${body}`,
    `Indented ${body}`.slice(0, body.length - 3),
    '1. First',
    '2. Second',
  ]);
});

test('a sentence goes on from the foot of a column to the head of the next, and over a page', () => {
  const left = lines(['The Earth turns under', 'two bulges that are'], { baseline: 700 });
  const right = lines(['made of water.', 'Spring tides are high.'], { baseline: 100, left: 300 });
  expect(paragraphs([...left, ...right])[0]).toMatch(
    /^The Earth turns under two bulges that are made of water\./,
  );
  const next = lines(['made of water.'], { page: 2, baseline: 100 });
  expect(paragraphs([...left, ...next])).toEqual([
    'The Earth turns under two bulges that are made of water.',
  ]);
  const ended = lines(['That is the tide.'], { baseline: 700 });
  expect(paragraphs([...ended, ...next])).toEqual(['That is the tide.', 'made of water.']);
});

test('what looks like markup in a PDF is text', () => {
  const { html, text } = read(lines(['<img src=x onerror=alert(1)> & <b>']));
  expect(html).toBe('<p>&lt;img src=x onerror=alert(1)&gt; &amp; &lt;b&gt;</p>');
  expect(text).toBe('<img src=x onerror=alert(1)> & <b>');
});

test('nothing but spaces makes an empty passage', () => {
  expect(read([aPiece('  '), aPiece('')])).toEqual({ text: '', html: '' });
});

test('a selection that is too long is refused with its length', () => {
  const many = lines(Array<string>(2100).fill('x'.repeat(50)));
  expect(() => read(many)).toThrow(expect.objectContaining({ message: 'errorSelectionTooLong' }));
});
