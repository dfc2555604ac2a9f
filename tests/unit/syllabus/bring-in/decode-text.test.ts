import { expect, it } from 'vitest';
import { decodeText } from '#lib/syllabus/bring-in/decode-text.ts';

it.each([
  ['UTF-8', new TextEncoder().encode('1 Ébullition – ω')],
  ['UTF-8 with a byte order mark', new TextEncoder().encode('\ufeff1 Ébullition – ω')],
  ['UTF-16, little end first', Uint8Array.from([0xff, 0xfe, ...units('1 Ébullition – ω')])],
  ['UTF-16, big end first', Uint8Array.from([0xfe, 0xff, ...units('1 Ébullition – ω', true)])],
])('%s is read', (_, bytes) => {
  expect(decodeText(bytes)).toBe('1 Ébullition – ω');
});

it('Windows-1252 is read where the bytes are no UTF-8', () => {
  expect(decodeText(Uint8Array.from([0x31, 0x20, 0xc9, 0x62, 0x75, 0x20, 0x96]))).toBe('1 Ébu –');
});

function units(text: string, isBig = false): number[] {
  return [...text].flatMap((letter) => {
    const code = letter.charCodeAt(0);
    return isBig ? [code >> 8, code & 255] : [code & 255, code >> 8];
  });
}
