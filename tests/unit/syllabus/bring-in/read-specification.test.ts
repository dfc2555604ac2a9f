import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { StudentError } from '#lib/model/student-error.ts';
import { normaliseRows } from '#lib/syllabus/normalise-rows.ts';
import { readSpecification } from '#lib/syllabus/bring-in/specification/read-specification.ts';
import { scanned } from '#tests/tools/demo/pdfs/papers.ts';
import { PLAIN, makeOutline, writeSpecification } from '#tests/tools/demo/pdfs/specification.ts';
import { aPiece } from '../../capture/pdf/page-of-text.ts';
import { pagesOfPdf } from './pages-of-pdf.ts';
import { STYLES, specComesBack } from './spec-comes-back.ts';

describe('a specification of 200 lines comes back, at least 98 % of them in the right place:', () => {
  it.each(STYLES)('%s', async (_, over) => {
    for (const seed of [7, 8, 9]) {
      const { part, missed, extra, courseName } = await specComesBack(over, seed);
      expect(part, missed.slice(0, 5).join('\n')).toBeGreaterThanOrEqual(0.98);
      expect(Math.abs(extra)).toBeLessThanOrEqual(4);
      expect(courseName).toBe('Foundation Oceanography');
    }
  });
});

describe('of a PDF', () => {
  it('what is no topic is left out, each sort said once with its page', async () => {
    const pdf = writeSpecification(makeOutline(60));
    const { remarks } = readSpecification(await pagesOfPdf(pdf));
    const told = remarks.filter(({ about }) => about !== 'prose');
    expect(told.map(({ about, page, text }) => [about, page, text])).toEqual([
      ['cover', 1, 'Specification for first teaching in the coming year'],
      ['cover', 1, 'Ormscaith College, third version'],
      ['contents', 2, 'Contents'],
      ['running-head', 2, 'Foundation Oceanography: specification'],
      ['page-number', 2, expect.stringMatching(/^Page 2 of \d$/)],
      ['running-head', 3, 'Ormscaith College'],
    ]);
    expect(remarks.some(({ about }) => about === 'prose')).toBe(true);
  });

  it('tiers and marks are read', async () => {
    const entries = [
      { depth: 0, code: '1', text: 'Waves (30 marks)' },
      { depth: 1, code: '1.1', text: 'Shoaling (Higher tier only)' },
      { depth: 0, code: '2', text: 'Tides (70 marks)' },
    ];
    const { rows } = readSpecification(await pagesOfPdf(writeSpecification(entries)));
    expect(rows).toMatchObject([
      { text: 'Waves', share: 30, unit: 'marks' },
      { text: 'Shoaling', group: 'Higher tier' },
      { text: 'Tides', share: 70 },
    ]);
  });

  it('heads and numbers further from the edges are known by standing on page after page', () => {
    const page = (number: number, texts: string[]) => ({
      page: number,
      height: 842,
      pieces: texts.map((text, i) => aPiece(text, { page: number, baseline: 100 + 20 * i })),
    });
    const { rows, remarks } = readSpecification([
      page(1, ['ii PREFACE', '1 Waves', '1.1 Swell', '1.2 Surf']),
      page(2, ['iii PREFACE', '2 Tides', '2.1 Springs', '2.2 Neaps']),
      page(3, ['iv PREFACE', '3 Ice', '3.1 Floes', '3.2 Bergs']),
    ]);
    expect(rows.map(({ code }) => code).join(' ')).toBe('1 1.1 1.2 2 2.1 2.2 3 3.1 3.2');
    expect(remarks).toEqual([{ line: 1, page: 1, about: 'running-head', text: 'ii PREFACE' }]);
  });

  it('a scan is told, with its number of pages', async () => {
    const pages = await pagesOfPdf(scanned());
    expect(() => readSpecification(pages)).toThrow(new StudentError('errorSyllabusScan', 1));
  });

  it('a page without text is said, the others are read', async () => {
    const [cover, contents, ...rest] = await pagesOfPdf(writeSpecification(makeOutline(60)));
    const { remarks, rows } = readSpecification([cover!, { ...contents!, pieces: [] }, ...rest]);
    expect(remarks).toContainEqual({ line: 3, page: 2, about: 'picture-page' });
    expect(rows).toHaveLength(60);
  });

  it('longer than a syllabus may be, the first 5,000 lines are read and the rest is said', async () => {
    const style = { ...PLAIN, prose: false };
    const pdf = writeSpecification(makeOutline(5200), style);
    const { rows, remarks } = readSpecification(await pagesOfPdf(pdf));
    expect(rows).toHaveLength(5000);
    expect(remarks.at(-1)).toMatchObject({ about: 'too-many', text: expect.stringMatching(/^\d/) as string });
  });
});

it('whatever stands on the pages is read or told, and rows never jump a level', () => {
  const run = fc.record({
    text: fc.oneof(
      fc.constantFrom('1', '1.1', '(a)', '•', 'Waves', 'Contents', 'x .... 3', 'Page 2', ' '),
      fc.string(),
    ),
    left: fc.double({ min: -50, max: 600, noNaN: true }),
    baseline: fc.double({ min: 0, max: 842, noNaN: true }),
    width: fc.double({ min: 0, max: 500, noNaN: true }),
    size: fc.constantFrom(0, 8, 10, 10, 14, 20),
    endsLine: fc.boolean(),
  });
  fc.assert(
    fc.property(fc.array(fc.array(run, { maxLength: 12 }), { maxLength: 4 }), (pages) => {
      const made = pages.map((pieces, i) => ({
        page: i + 1,
        height: 842,
        pieces: pieces.map((one) => ({ ...one, page: i + 1 })),
      }));
      try {
        const { rows } = readSpecification(made);
        expect(normaliseRows(rows)).toEqual(rows);
      } catch (error) {
        expect(error).toBeInstanceOf(StudentError);
      }
    }),
    { numRuns: 400 },
  );
});
