// @vitest-environment jsdom
import { describe, expect, test } from 'vitest';
import { LONGEST_PASSAGE } from '#lib/capture/limits.ts';
import { isRich, ownPassage, readPasted, typedHtml } from '#lib/capture/own/own-passage.ts';
import { ONLINE, SHEET, WORD, WRITER } from './clipboard.ts';

const textOf = (html: string) => ownPassage(html, document).text;

describe('rich text from office programs', () => {
  test('a word processor: headings, lists, tables, powers and the equation come along, nothing else does', () => {
    const { html, pictures, lost } = readPasted(WORD, document);
    expect(textOf(html)).toBe(
      [
        'Waves',
        'Deep water is deeper than half a wavelength, CO2 apart.',
        '- Swell',
        '  - from afar',
        '- Wind sea',
        '1. First',
        'It runs at \\( c = \\sqrt{\\frac{g\\lambda}{2\\pi}} \\).',
        'Depth\tinner',
        'Orbits of water',
      ].join('\n'),
    );
    expect(html).toContain('<sub>2</sub>');
    expect(html).toContain('<msqrt><mfrac>');
    expect(html).not.toMatch(/mso|o:p|style|class|file:|xml|Definitions|clip_image/i);
    expect([pictures.length, lost]).toEqual([0, 1]);
  });

  test('another one: pictures come with their bytes, an equation as its picture and text', () => {
    const pasted = readPasted(WRITER, document);
    expect(pasted.html).toContain('<b>Tides</b> come <em>twice</em> a day:');
    expect(pasted.pictures.map(({ alt }) => alt)).toEqual(['formula: T = 12.42 h', '']);
    expect(pasted.html).toMatch(/<img [^>]*data-picture="0"[\s\S]*<img [^>]*data-picture="1"/);
    expect(pasted.lost).toBe(0);
  });

  test('an editor in the browser: styles become what they mean; a picture behind an address is not fetched', () => {
    const pasted = readPasted(ONLINE, document);
    expect(pasted.html).toContain('<strong>Bold</strong> and H<sub>2</sub>O, m<sup>2</sup>');
    expect(pasted.html).not.toMatch(/https|<b>/);
    expect(textOf(pasted.html)).toContain('A chart');
    expect(pasted.lost).toBe(1);
  });

  test('a spreadsheet stays a table', () => {
    const { html } = readPasted(SHEET, document);
    expect(html).toContain('<td colspan="2">Tides</td>');
    expect(textOf(html)).toBe('Tides\n1.5\tm');
  });

  test('scripts, handlers and frames are gone; the words stay', () => {
    const { html } = readPasted(
      '<p onclick="alert(1)">a<script>alert(1)</script><iframe src="http://127.0.0.1"></iframe></p><img src=x onerror=alert(1)><svg onload=alert(1)></svg>',
      document,
    );
    expect(html).toBe('<p>a</p>');
  });
});

describe('equations of word processors', () => {
  const texOf = (omml: string) => {
    const { html } = readPasted(
      `<p><!--[if gte msEquation 12]><m:oMath>${omml}</m:oMath><![endif]--></p>`,
      document,
    );
    return /<annotation[^>]*>([^<]*)</.exec(html)?.[1]?.replaceAll('&amp;', '&');
  };
  const run = (text: string) => `<i><span style='font-family:"Cambria Math"'><m:r>${text}</m:r></span></i>`;
  test.each([
    [`<m:sSup><m:e>${run('x')}</m:e><m:sup>${run('2')}</m:sup></m:sSup>`, 'x^{2}'],
    [
      `<m:sSubSup><m:e>${run('x')}</m:e><m:sub>${run('i')}</m:sub><m:sup>${run('n')}</m:sup></m:sSubSup>`,
      'x_{i}^{n}',
    ],
    [`<m:rad><m:deg>${run('3')}</m:deg><m:e>${run('x')}</m:e></m:rad>`, /\\sqrt\[\{?3\}?\]\{x\}/],
    [
      `<m:nary><m:naryPr><m:chr m:val="∑"/><m:limLoc m:val="undOvr"/></m:naryPr><m:sub>${run('i=0')}</m:sub><m:sup>${run('n')}</m:sup><m:e>${run('i')}</m:e></m:nary>`,
      /\\sum_\{i ?= ?0\}\^\{n\} ?i/,
    ],
    [
      `<m:nary><m:sub>${run('0')}</m:sub><m:sup>${run('1')}</m:sup><m:e>${run('x')}</m:e></m:nary>`,
      /\\int_\{0\}\^\{1\} ?x/,
    ],
    [
      `<m:d><m:dPr><m:begChr m:val="["/><m:endChr m:val="]"/></m:dPr><m:e>${run('a+b')}</m:e></m:d>`,
      /\[ ?a ?\+ ?b ?(\\right)?\]/,
    ],
    [
      `<m:func><m:fName><m:r><m:rPr><m:sty m:val="p"/></m:rPr>sin</m:r></m:fName><m:e>${run('x')}</m:e></m:func>`,
      /\\sin ?x/,
    ],
    [
      `<m:acc><m:accPr><m:chr m:val="⃗"/></m:accPr><m:e>${run('v')}</m:e></m:acc>`,
      /\\(vec|overrightarrow)\{v\}/,
    ],
    [
      `<m:m><m:mr><m:e>${run('a')}</m:e><m:e>${run('b')}</m:e></m:mr><m:mr><m:e>${run('c')}</m:e><m:e>${run('d')}</m:e></m:mr></m:m>`,
      /a ?& ?b ?\\\\ ?c ?& ?d/,
    ],
    [`<m:r><m:rPr><m:nor/></m:rPr>for all</m:r>${run('-1')}`, /\\text\{for all\} ?-1/],
  ])('%s', (omml, tex) => {
    if (typeof tex === 'string') expect(texOf(omml)).toBe(tex);
    else expect(texOf(omml)).toMatch(tex);
  });
});

describe('typed text', () => {
  test('paragraphs, line ends, and TeX between dollar signs or brackets', () => {
    const html = typedHtml('One $x^2$ and \\(y\\)\nline\n\n\\[\n\\frac{a}{b}\n\\]\n\n  $5 and $6', document);
    expect(textOf(html)).toBe('One \\( x^2 \\) and \\( y \\)\nline\n\\[ \\frac{a}{b} \\]\n$5 and $6');
    expect(html).toMatch(/^<p dir="auto">One <math><semantics><msup>/);
    expect(html).toContain('<mfrac>');
  });

  test('TeX that does not parse stays as it was typed, and so does all around it', () => {
    const html = typedHtml('before $\\frac{1}{$ between $\\nosuch x$ after $ alone', document);
    expect(textOf(html)).toBe('before \\( \\frac{1}{ \\) between \\( \\nosuch x \\) after $ alone');
    expect(html).toContain('<mtext>\\frac{1}{</mtext>');
  });

  test('emoji and text from right to left come through, each paragraph in its own direction', () => {
    const text = '😀 👩‍🔬 swell\n\nשלום \u202babc\u202c عربي';
    const html = typedHtml(text, document);
    expect(textOf(html)).toBe('😀 👩‍🔬 swell\nשלום \u202babc\u202c عربي');
    expect(html.match(/dir="auto"/g)).toHaveLength(2);
  });

  test('markup that is typed is words', () => {
    expect(textOf(typedHtml('<b>a</b> &amp; <script>', document))).toBe('<b>a</b> &amp; <script>');
  });

  test('a line of 20,000 characters is kept whole; what is too long is refused with its length', () => {
    const line = 'waves '.repeat(3333) + 'xx';
    expect(textOf(typedHtml(line, document))).toHaveLength(20_000);
    expect(() => ownPassage(typedHtml('x'.repeat(LONGEST_PASSAGE + 1), document), document)).toThrow(
      'errorOwnLong',
    );
  });
});

test('what says nothing by its form is not rich', () => {
  expect(
    isRich(readPasted('<meta charset=utf-8><div><span style="color:red">only words</span></div>', document)),
  ).toBe(false);
  expect(isRich(readPasted('<p>a<sup>2</sup></p>', document))).toBe(true);
  expect(isRich(readPasted('<p>with $x$</p>', document))).toBe(true);
});
