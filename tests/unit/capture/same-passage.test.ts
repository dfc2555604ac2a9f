import fc from 'fast-check';
import { expect, it } from 'vitest';
import { passageKey } from '#lib/capture/same-passage.ts';

it.each([
  ['  a \n\t b\u00a0c ', 'a b c'],
  // Unicode Standard Annex #15, figure 3: A with ring above composes under NFC.
  ['A\u030a', '\u00c5'],
  ['\u6d77\u3000\u6d41', '\u6d77 \u6d41'],
  ['', ''],
])('%j and %j are the same passage', (text, key) => expect(passageKey(text)).toBe(key));

it('tells case and punctuation apart', () => {
  expect(passageKey('Tide')).not.toBe(passageKey('tide'));
  expect(passageKey('tide.')).not.toBe(passageKey('tide'));
});

it('changes nothing the second time', () => {
  fc.assert(
    fc.property(fc.string({ unit: 'binary' }), (text) => passageKey(passageKey(text)) === passageKey(text)),
  );
});
