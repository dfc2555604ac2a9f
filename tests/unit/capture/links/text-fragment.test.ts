import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { parseTextFragment, textFragment } from '#lib/capture/links/text-fragment.ts';
import type { TextQuoteSelector } from '#lib/model/selector.ts';

const URL_ = 'https://sea.example/waves';

const quote = (exact: string, prefix?: string, suffix?: string): TextQuoteSelector => ({
  type: 'TextQuoteSelector',
  exact,
  ...(prefix === undefined ? {} : { prefix }),
  ...(suffix === undefined ? {} : { suffix }),
});

const fragmentOf = (...parts: Parameters<typeof quote>): string =>
  textFragment(URL_, quote(...parts)).slice(URL_.length);

// Source: URL Fragment Text Directives, Draft Community Group Report of the WICG, 3.2 Syntax and 3.2.1 Context Terms:
// its grammar and examples.
describe('parseTextFragment', () => {
  it.each([
    ['#:~:text=an%20example%20text%20fragment', { start: 'an example text fragment' }],
    ['#:~:text=an%20example,text%20fragment', { start: 'an example', end: 'text fragment' }],
    [
      '#:~:text=this%20is-,an%20example,-text%20fragment',
      { prefix: 'this is', start: 'an example', suffix: 'text fragment' },
    ],
    ['#test:~:text=foo', { start: 'foo' }],
    ['#:~:text=a-,b,c,-d', { prefix: 'a', start: 'b', end: 'c', suffix: 'd' }],
    ['#:~:text=a,-b', { start: 'a', suffix: 'b' }],
    ['#:~:text=a-,b', { prefix: 'a', start: 'b' }],
    ['#:~:text=%2D%2C%26', { start: '-,&' }],
  ])('reads %s', (fragment, directive) => {
    expect(parseTextFragment(URL_ + fragment)).toEqual([directive]);
  });

  it('reads several directives, and passes over what is none', () => {
    expect(parseTextFragment(`${URL_}#:~:text=one&other=2&text=two`)).toEqual([
      { start: 'one' },
      { start: 'two' },
    ]);
  });

  it.each([
    '',
    '#',
    '#text=foo',
    '#:~:',
    '#:~:text=',
    '#:~:text=-',
    '#:~:text=a-',
    '#:~:text=-,b',
    '#:~:text=a,b,c',
  ])('reads nothing in %s', (fragment) => {
    expect(parseTextFragment(URL_ + fragment)).toEqual([]);
  });

  it('leaves a percent sign that begins no code', () => {
    expect(parseTextFragment(`${URL_}#:~:text=100%`)).toEqual([{ start: '100%' }]);
  });
});

describe('textFragment', () => {
  it('names a short passage whole', () => {
    expect(fragmentOf('Long waves outrun short ones.')).toBe('#:~:text=Long%20waves%20outrun%20short%20ones');
  });

  it('escapes what belongs to the syntax', () => {
    expect(fragmentOf('deep-water waves, swell & surf')).toBe(
      '#:~:text=deep%2Dwater%20waves%2C%20swell%20%26%20surf',
    );
  });

  it('names a long passage by its first and last words and, should the last have changed, by the first alone', () => {
    const exact = 'The tide follows the moon,\n which pulls hardest on the water that lies nearest to it.';
    expect(parseTextFragment(textFragment(URL_, quote(exact)))).toEqual([
      { start: 'The tide follows the', end: 'lies nearest to it' },
      { start: 'The tide follows the' },
    ]);
  });

  it('goes by the neighbours first, and by the passage alone should they have changed', () => {
    const directives = parseTextFragment(
      textFragment(URL_, quote('(the moon)', 'Tides:  the sea follows ', ', which pulls at it.')),
    );
    expect(directives).toEqual([
      { prefix: 'Tides: the sea follows', start: '(the moon)', suffix: ', which pulls at it' },
      { start: 'the moon' },
    ]);
    const long = 'The tide follows the moon, which pulls hardest on the water that lies nearest.';
    expect(parseTextFragment(textFragment(URL_, quote(long, 'Examples:', '\n\n>>> nsum'))).at(0)).toEqual({
      prefix: 'Examples:',
      start: 'The tide follows the',
      end: 'water that lies nearest.',
      suffix: '>>> nsum',
    });
  });

  it('cuts no word in two', () => {
    const short = parseTextFragment(textFragment(URL_, quote('oo', 'the m', 'n pulls')));
    expect(short).toEqual([{ prefix: 'the', start: 'moon', suffix: 'pulls' }, { start: 'moon' }]);
    const long = parseTextFragment(textFragment(URL_, quote('ides follow the moon and the s', 'T', 'un.')));
    expect(long).toEqual([{ start: 'follow the moon and the' }]);
  });

  it('keeps clear of formulas, which may be set otherwise by now', () => {
    const exact = 'In shallow water \\(c = \\sqrt{g h}\\) for every long wave, and so on.';
    expect(parseTextFragment(textFragment(URL_, quote(exact)))).toEqual([
      { start: 'In shallow water', end: 'wave, and so on' },
      { start: 'In shallow water' },
    ]);
    const behind = 'The speed of every long wave is \\(c = \\sqrt{g h}\\)';
    expect(parseTextFragment(textFragment(URL_, quote(behind, 'So: ', 'always')))).toEqual([
      { prefix: 'So:', start: 'The speed of every' },
      { start: 'The speed of every' },
    ]);
  });

  it('keeps an address’s own fragment, and puts no second sign and no second directive behind it', () => {
    const fox = quote('Waves outrun one another');
    const text = ':~:text=Waves%20outrun%20one%20another';
    expect(textFragment(`${URL_}#deep`, fox)).toBe(`${URL_}#deep${text}`);
    expect(textFragment(`${URL_}#deep:~:text=old`, fox)).toBe(`${URL_}#deep${text}`);
    expect(textFragment(`${URL_}#:~:text=old`, fox)).toBe(`${URL_}#${text}`);
    expect(textFragment(`${URL_}?q=1`, fox)).toBe(`${URL_}?q=1#${text}`);
  });

  it('leaves the address alone where there is no word', () => {
    for (const exact of ['—', ' \n ', '= + −']) expect(textFragment(URL_, quote(exact))).toBe(URL_);
  });

  it('writes what any parser of addresses takes, and what is read again', () => {
    const text = fc.string({ unit: 'binary', minLength: 1, maxLength: 80 });
    const words = fc
      .array(fc.constantFrom('sea', '波', 'بحر', '\u{1f30a}', 'a-b', 'x,y', '&', 'e\u0301', '\ud800'), {
        maxLength: 30,
      })
      .map((parts) => parts.join(' '));
    const any = fc.oneof(text, words);
    fc.assert(
      fc.property(any, any, any, (exact, prefix, suffix) => {
        const url = textFragment(URL_, quote(exact, prefix, suffix));
        expect(URL.canParse(url)).toBe(true);
        expect(url === URL_ || parseTextFragment(url).length > 0).toBe(true);
        expect(url.slice(URL_.length)).toMatch(/^(#:~:text=([\w!'()*.~%]+(-,|,-?|&text=)?)+)?$/);
      }),
    );
  });
});
