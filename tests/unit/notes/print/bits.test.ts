import fc from 'fast-check';
import { expect, test } from 'vitest';
import { type Bit, bitsBetween, bitsOf, lineBits } from '#lib/notes/print/bits.ts';

const read = (bits: Bit[]) => bits.map((bit) => (bit.kind === 'words' ? bit.text : `<${bit.tex}>`)).join('');

test('a line is its lead, a space and its rest', () => {
  const bits = lineBits('Long waves', String.raw`travel at \(\sqrt{gh}\)`);
  expect(read(bits)).toBe('Long waves travel at <\\sqrt{gh}>');
  expect(bits.map(({ style }) => style)).toEqual(['lead', 'rest', 'rest', 'rest']);
});

test('a line without a rest is a remark, one without a lead all rest', () => {
  expect(lineBits('Mind the units', '').map(({ style }) => style)).toEqual(['remark']);
  expect(lineBits('', 'so').map(({ style }) => style)).toEqual(['rest']);
});

test('pieces between cuts are the whole, whatever the cuts, and no formula is cut or said twice', () => {
  const text = String.raw`one \(a\) two \[b\] three $c$ costs $5`;
  const bits = bitsOf('rest', text);
  const whole = read(bits);
  const places = bits.flatMap((bit, index) =>
    bit.kind === 'maths'
      ? [{ bit: index, at: 0 }]
      : Array.from({ length: bit.text.length }, (_, at) => ({ bit: index, at })),
  );
  fc.assert(
    fc.property(fc.subarray(places.slice(1)), (cuts) => {
      const from = [{ bit: 0, at: 0 }, ...cuts];
      const pieces = from.map((cut, i) => bitsBetween(bits, cut, from[i + 1]));
      expect(pieces.map(read).join('')).toBe(whole);
      for (const piece of pieces) expect(piece.length).toBeGreaterThan(0);
    }),
  );
});

test('blanks beside a formula that is set apart fall away, other blanks do not', () => {
  expect(bitsOf('rest', String.raw`one \[a\] two $b$ \[c\]`)).toMatchObject([
    { text: 'one' },
    { tex: 'a' },
    { text: 'two ' },
    { tex: 'b' },
    { tex: 'c' },
  ]);
});
