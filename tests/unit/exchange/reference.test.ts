import fc from 'fast-check';
import { describe, expect, it, test } from 'vitest';
import { dayInWords, referenceOf } from '#lib/exchange/reference.ts';

const words = { noDate: 'no date', availableAt: 'Available at', accessed: 'Accessed' };
const source = {
  url: 'https://example.invalid/waves',
  title: 'How waves travel',
  site: 'Open lessons',
  author: 'A. Nemo',
  published: '2021-10-03',
};
const cite = (over: Partial<typeof source> = {}) => referenceOf({ ...source, ...over }, '2026-03-03', words);
const END = 'Available at: https://example.invalid/waves (Accessed: 3 March 2026).';

describe('a reference', () => {
  it.each([
    [
      'names author, year, title, site and address',
      {},
      `A. Nemo (2021) How waves travel. Open lessons. ${END}`,
    ],
    ['takes a year alone', { published: '1996' }, `A. Nemo (1996) How waves travel. Open lessons. ${END}`],
    [
      'says when there is no date',
      { published: '' },
      `A. Nemo (no date) How waves travel. Open lessons. ${END}`,
    ],
    [
      'begins with the site where no one is named',
      { author: '' },
      `Open lessons (2021) How waves travel. ${END}`,
    ],
    [
      'names an organisation once',
      { author: 'Open lessons' },
      `Open lessons (2021) How waves travel. ${END}`,
    ],
    [
      'names one that its title repeats once',
      { author: '', site: 'Waves', title: 'Waves' },
      `Waves (2021) ${END}`,
    ],
    ['ends no sentence twice', { title: 'Why waves?' }, `A. Nemo (2021) Why waves? Open lessons. ${END}`],
    [
      'of a file has no address',
      { url: 'ni:///sha-256;f4OxZX_x_FO5LcGBSKHWXfwtSx-j1ncoSt3SABJtkGk', site: '' },
      'A. Nemo (2021) How waves travel. (Accessed: 3 March 2026).',
    ],
  ])('%s', (_what, over, reference) => expect(cite(over)).toBe(reference));

  it('is written in the words and the spelling of another language', () => {
    const others = { noDate: 'o. J.', availableAt: 'Verfügbar unter', accessed: 'Zugriff' };
    expect(referenceOf({ ...source, published: '' }, '2026-03-03', others, 'de')).toBe(
      'A. Nemo (o. J.) How waves travel. Open lessons. Verfügbar unter: https://example.invalid/waves (Zugriff: 3. März 2026).',
    );
  });
});

describe('a day in words', () => {
  it.each([
    ['2026-03-03', '3 March 2026'],
    ['2024-02-29', '29 February 2024'],
    ['2026-12', 'December 2026'],
    ['2026', '2026'],
    ['', ''],
  ])('%s', (date, text) => expect(dayInWords(date)).toBe(text));

  test('is the same day as in a calendar', () => {
    const days = fc.date({ min: new Date('1500-01-01'), max: new Date('2499-12-31'), noInvalidDate: true });
    fc.assert(
      fc.property(days, (date) => {
        const expected = date.toLocaleDateString('en-GB', { dateStyle: 'long', timeZone: 'UTC' });
        expect(dayInWords(date.toISOString().slice(0, 10))).toBe(expected);
      }),
    );
  });
});
