import fc from 'fast-check';
import { expect, test } from 'vitest';
import { hasTex, splitTex } from '#lib/notes/split-tex.ts';

test.each([
  ['p = \\(\\rho g h\\) in water', ['p = ', { tex: '\\rho g h', display: false }, ' in water']],
  ['\\[c = \\sqrt{gh}\\]', [{ tex: 'c = \\sqrt{gh}', display: true }]],
  [
    '$f$ and $$f = 2\\Omega\\sin\\varphi$$',
    [{ tex: 'f', display: false }, ' and ', { tex: 'f = 2\\Omega\\sin\\varphi', display: true }],
  ],
  ['$\\omega^2 = gk$, deep', [{ tex: '\\omega^2 = gk', display: false }, ', deep']],
  ['costs $5 and then $6', ['costs $5 and then $6']],
  ['a $ b $ c', ['a $ b $ c']],
  ['one \\$ sign and \\$ another', ['one \\$ sign and \\$ another']],
  ['left open \\(x + 1', ['left open \\(x + 1']],
  ['', []],
])('%s', (text, pieces) => {
  const said = splitTex(text).map((piece) =>
    piece.kind === 'words' ? piece.text : { tex: piece.tex, display: piece.display },
  );
  expect(said).toEqual(pieces);
  expect(hasTex(text)).toBe(pieces.some((piece) => typeof piece !== 'string'));
});

test('no word is lost, whatever is written', () => {
  const part = fc.constantFrom('\\(', '\\)', '\\[', '\\]', '$', '$$', '\\$', 'x', ' ', '5', '\n', 'é', '😀');
  fc.assert(
    fc.property(fc.array(part, { maxLength: 14 }), (parts) => {
      const text = parts.join('');
      const bare = (from: string) => from.replace(/[\\()[\]$\s]/g, '');
      const joined = splitTex(text)
        .map((piece) => (piece.kind === 'words' ? piece.text : piece.tex))
        .join('');
      expect(bare(joined)).toBe(bare(text));
    }),
  );
});
