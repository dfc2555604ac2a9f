// @vitest-environment jsdom
import fc from 'fast-check';
import katex from 'katex';
import { describe, expect, it } from 'vitest';
import { describeRange } from '#lib/capture/find/describe-range.ts';
import { findPassage } from '#lib/capture/find/find-passage.ts';
import type { Found } from '#lib/capture/find/found.ts';
import { readPageText } from '#lib/capture/find/page-text.ts';
import type { Selector } from '#lib/model/selector.ts';
import { marked, show } from '../select.ts';

/** Describes the marked passage of one page and looks for it in the next. */
function refind(before: string, after: string): Found | null {
  const selectors = describeRange(marked(before), document.body);
  show(after);
  return findPassage(readPageText(document.body), selectors);
}

const summary = (found: Found | null) => found && [found.how, found.range.toString()];

const TIDES = 'The tide follows the moon, which pulls hardest on the water that lies nearest to it.';
const WAVES = 'Waves in deep water outrun one another: the longer the wave, the faster it travels.';
const WINDS = 'Wind that blows along a coast for days drags the upper water with it, and then aside.';

describe('findPassage', () => {
  // Source: W3C Web Annotation Data Model, 4.2.4 Text Quote Selector: the example's quote, misspelled as it is there.
  it('finds the recommendation’s quote by its neighbours', () => {
    show('<p>An anotation. Yes, this is an anotation that has some errors, and an anotation is here.</p>');
    const quote: Selector = {
      type: 'TextQuoteSelector',
      exact: 'anotation',
      prefix: 'this is an ',
      suffix: ' that has some',
    };
    const found = findPassage(readPageText(document.body), [quote])!;
    expect(summary(found)).toEqual(['quote', 'anotation']);
    expect(found.range.startOffset).toBe('An anotation. Yes, this is an '.length);
  });

  it('says what led to it', () => {
    const page = `<p>${WAVES}</p><p>[${TIDES}]</p><p>${WINDS}</p>`;
    const plain = page.replace(/[[\]]/g, '');
    expect(summary(refind(page, plain))).toEqual(['range', TIDES]);
    expect(summary(refind(page, plain.replaceAll('p>', 'div>')))).toEqual(['position', TIDES]);
    expect(summary(refind(page, `<h1>Water</h1>${plain.replaceAll('p>', 'div>')}`))).toEqual([
      'quote',
      TIDES,
    ]);
    const reworded = TIDES.replace('hardest', 'most');
    expect(summary(refind(page, plain.replace(TIDES, reworded)))).toEqual(['fuzzy', reworded]);
  });

  it('tells how much of the quote is left', () => {
    const found = refind(`<p>[${TIDES}]</p>`, `<p>${TIDES.replace('moon', 'noon')}</p>`);
    expect(found!.likeness).toBeCloseTo(1 - 1 / TIDES.replaceAll(' ', '').length, 5);
  });

  it('minds neither white space nor markup nor an editor’s quotes and dashes', () => {
    const before = `<p>${WAVES}</p>\n<p>[It is "slack water" - the tide stands. Then it turns.]</p>`;
    const after =
      `<div>${WAVES}<div>It is \u201cslack\n  <i>wa</i>ter\u201d \u2013 the&nbsp;tide ` +
      `stands. Then it tu\u00adrns.</div></div>`;
    const [how, text] = summary(refind(before, after))!;
    expect(how).toBe('quote');
    expect(text).toMatch(/^It is \u201cslack[^]*tu\u00adrns\.$/);
  });

  it('tells equal passages apart by what stands beside them', () => {
    const note = 'See the notes for more.';
    const found = refind(
      `<p>${TIDES}</p><p>${note}</p><p>${WAVES}</p><p>[${note}]</p>`,
      `<p>${WINDS}</p><p>${WAVES}</p><p id="x">${note}</p><p>${TIDES}</p><p>${note}</p>`,
    );
    expect(found!.range.startContainer.parentElement!.id).toBe('x');
  });

  it('takes a changed passage in its place before an equal one elsewhere', () => {
    const rule = 'Compute the sum to a precision of ten digits, and compare it with the table.';
    const found = refind(
      `<p>${TIDES}</p><p>[${rule}]</p><p>${WAVES}</p><p>${WINDS}</p><p>${rule}</p>`,
      `<h1>Sums</h1><p>${TIDES}</p><p id="x">${rule.replace('ten', 'twelve')}</p><p>${WAVES}</p><p>${WINDS}</p><p>${rule}</p>`,
    );
    expect(found!.range.startContainer.parentElement!.id).toBe('x');
  });

  it('takes the nearest by words and neighbours of the section that its path still leads to', () => {
    const rule = 'Adding exactly may take long where one number is far greater than the other:';
    const section = (id: string, name: string, [open, close] = ['', '']) =>
      `<section id="${id}"><p>${TIDES}</p><p>Call ${name}(x, y) here.</p><div><p>${open}${rule}${close}</p></div><p>Call ${name}(1, 2) now.</p></section>`;
    const found = refind(
      section('plus', 'plus') + section('minus', 'minus', ['[', ']']),
      (section('plus', 'plus') + section('minus', 'minus')).replaceAll(/<\/?div>/g, ''),
    );
    expect(found!.range.startContainer.parentElement!.closest('section')!.id).toBe('minus');
  });

  it('takes a changed passage in its place before one that the page says nearly the same around', () => {
    const entry = (id: string, verb: string, more = 'description') =>
      `<section id="${id}"><p>${verb} the numbers x and y, giving a floating-point result, optionally with a custom precision and rounding mode.</p>
      <p>See the documentation of adding for a detailed ${more} of how to specify precision and rounding.</p>
      <p>Examples: the result is a number, as of every function on this page.</p>${`<p>${WAVES} ${WINDS}</p>`.repeat(4)}</section>`;
    const range = entry('b', 'Divides')
      .replace('<p>See', '<p>[See')
      .replace('rounding.</p>', 'rounding.]</p>');
    const found = refind(
      entry('a', 'Multiplies') + range,
      entry('a', 'Multiplies') + entry('b', 'Divides', 'list'),
    );
    expect(found!.range.startContainer.parentElement!.closest('section')!.id).toBe('b');
  });

  it('gives no place for what is gone, nor for a few words that stand elsewhere by chance', () => {
    expect(refind(`<p>${WAVES}</p><p>[${TIDES}]</p>`, `<p>${WAVES}</p><p>${WINDS}</p>`)).toBeNull();
    const page = `<p>So it is with the [spring tide] of March, twice a month.</p><p>${WAVES}</p>`;
    expect(refind(page, `<p>${WAVES}</p><p>A list: neap tide, spring tide, king tide.</p>`)).toBeNull();
    expect(refind(page, '')).toBeNull();
  });

  it.each(['script type="application/json"', 'noscript'])('passes over copies in a %s', (tag) => {
    const copy = `<${tag}>{"text":"${TIDES} ${WINDS}"}</${tag.split(' ')[0]}>`;
    const before = `<p>${WAVES}</p><p>[${TIDES}]</p><p>${WINDS}</p>`;
    expect(refind(before, `${copy}<p>${WAVES}</p>${copy}`)).toBeNull();
    const reworded = TIDES.replace('hardest', 'most');
    const found = refind(before, `${copy}<h1>Sea</h1><p>${WAVES}</p><p>${reworded}</p>${copy}`);
    expect(summary(found)).toEqual(['fuzzy', reworded]);
    const short = refind(
      '<p>Of the moon: [spring tides] and neap tides.</p>',
      `<${tag}>spring tides</${tag.split(' ')[0]}>`,
    );
    expect(short).toBeNull();
  });

  it('finds a passage with a script in it after the page has grown above', () => {
    const advert = '<script>show(1)</script>';
    const found = refind(
      `<p>[${WAVES}</p>${advert}<p>${TIDES}]</p>`,
      `<h1>Sea</h1><div>${WAVES}</div>${advert}<div>${TIDES}</div>`,
    );
    expect(summary(found)).toEqual(['quote', `${WAVES}show(1)${TIDES}`]);
  });

  it('finds a long passage that has grown in the middle, from its first word to its last', () => {
    const seas = ['swell', 'surge', 'ebb', 'drift', 'bore', 'eddy', 'ripple', 'storm', 'calm', 'flood'];
    const parts = seas.flatMap((sea, i) =>
      seas.map(
        (other, j) =>
          `<p>The ${sea} of day ${i * 10 + j} met ${other} water at ${(i * 37 + j * 11) % 59} m.</p>`,
      ),
    );
    const grown = [...parts.slice(0, 50), `<p>${WINDS}</p>`, ...parts.slice(50)];
    const after = `<h1>${WAVES}</h1>${grown.join('').replaceAll('met', 'came upon')}<p>${WINDS}</p>`;
    const found = refind(`<p>${WAVES}</p><div>[${parts.join('')}]</div><p>${WINDS}</p>`, after)!;
    expect(found.how).toBe('fuzzy');
    expect(found.range.toString()).toMatch(/^The swell of day 0 [^]* flood water at 19 m\.$/);
  });

  it('cuts no character in two at changed ends', () => {
    const found = refind(
      `<p>a[\u{1f30a}${TIDES}\u{1f41f}]b</p>`,
      `<p>a\u{1f30b}${TIDES.replace('moon', 'sun')}\u{1f420}b</p>`,
    )!;
    expect(found.range.toString().isWellFormed()).toBe(true);
  });

  it('gives no range where the page has changed since its text was read', () => {
    const selectors = describeRange(marked(`<p>${WAVES}</p><p>[${TIDES}]</p>`), document.body).slice(0, 2);
    const page = readPageText(document.body);
    document.querySelectorAll('p')[1]!.remove();
    expect(findPassage(page, selectors)).toBeNull();
  });
});

describe('passages with formulas', () => {
  const set = (tex: string): string => katex.renderToString(tex, { throwOnError: false });
  const raw = (tex: string): string => `\\(${tex}\\)`;
  const page = (maths: (tex: string) => string, [open, close] = ['', '']) =>
    `<p>${WAVES}</p><p>${maths('c = \\sqrt{gh}')}</p>
    <p>${open}In shallow water of depth ${maths('h')} every wave travels at ${maths('c = \\sqrt{g h}')},
    so that ${maths('\\lambda = c T')} for a wave of period ${maths('T')}, whatever its height.${close}</p><p>${WINDS}</p>`;

  it.each([
    ['typeset since', raw, set],
    ['plain TeX again', set, raw],
  ])('are found when the formulas are %s', (_, then, now) => {
    const found = refind(page(then, ['[', ']']), page(now))!;
    expect(found.range.toString()).toBe(document.querySelectorAll('p')[2]!.textContent);
  });

  it('are told apart when they differ in a formula only', () => {
    const rule = (tex: string) => `<p>The value of the integral is exactly ${raw(tex)} for every path.</p>`;
    const found = refind(
      `${rule('2\\pi i')}<p>[The value of the integral is exactly ${raw('4\\pi i')} for every path.]</p>`,
      `<h1>Paths</h1>${rule('2\\pi i')}${rule('4\\pi i')}`,
    )!;
    expect(found.range.toString()).toContain('4\\pi');
  });

  it('take a formula at their end whole', () => {
    const found = refind(
      `<p>[The speed of a long wave in water of even depth is ${raw('c = \\sqrt{g h}')}]</p>`,
      `<p>The speed of a long wave in water of even depth is ${set('c = \\sqrt{g h}')}</p>`,
    )!;
    expect(found.range.toString()).toBe(document.querySelector('p')!.textContent);
  });
});

/** Words of several scripts, emoji, and joined and combined characters. */
const WORDS = [
  'sea',
  'tide',
  '波',
  '海水',
  'بحر',
  'ים',
  '\u{1f30a}',
  '\u{1f468}\u200d\u{1f52c}',
  'e\u0301',
  'Ω',
];
const word = fc.constantFrom(...WORDS);
const block = fc.record({
  name: fc.constantFrom('p', 'li', 'div', 'h2'),
  texts: fc.array(fc.array(word, { minLength: 1, maxLength: 6 }), { minLength: 1, maxLength: 3 }),
});

function build(blocks: { name: string; texts: string[][] }[]): string {
  const inline = (words: string[], index: number) =>
    index % 2 === 0 ? words.join(' ') : `<em>${words.join(' ')}</em>`;
  return blocks.map(({ name, texts }) => `<${name}>${texts.map(inline).join(' ')}</${name}>`).join('\n');
}

describe('any passage of any page', () => {
  it('is found with the same text after paragraphs came in above it', () => {
    const ends = fc.tuple(fc.nat(), fc.nat());
    fc.assert(
      fc.property(
        fc.array(block, { minLength: 1, maxLength: 6 }),
        ends,
        fc.nat(2),
        (blocks, [from, to], more) => {
          show(build(blocks));
          const page = readPageText(document.body);
          const points = [...page.text].length;
          const [start, end] = [from % points, to % points].toSorted((a, b) => a - b) as [number, number];
          const range = page.rangeOf(page.unitOfPoint(start), page.unitOfPoint(end + 1))!;
          fc.pre(range.toString().trim() !== '');
          const selectors = describeRange(range, document.body);
          expect(findPassage(readPageText(document.body), selectors)?.range.toString()).toBe(
            range.toString(),
          );
          const wanted = range.toString().replace(/\s+/g, '');
          document.body.prepend(...Array.from({ length: more }, () => document.createElement('hr')));
          const found = findPassage(readPageText(document.body), selectors);
          expect(found?.range.toString().replace(/\s+/g, '')).toBe(wanted);
        },
      ),
      { numRuns: 200 },
    );
  });
});
