import { describe, expect, it } from 'vitest';
import { readMarkdown } from '#lib/syllabus/bring-in/read-markdown.ts';
import { StudentError } from '#lib/model/student-error.ts';
import { rowsText } from '../rows-text.ts';

const read = (...lines: string[]) => rowsText(readMarkdown(lines.join('\n')).rows);

describe('Markdown', () => {
  it('nests by headings of both kinds and by lists below them', () => {
    expect(
      read(
        'Waves',
        '=====',
        '',
        '## 1.1 Swell (12 marks)',
        '- State its *speed*.',
        '- Derive [its limit](https://example.invalid/limit) from `k`.',
        '  * Sketch the limit.',
        '',
        'Tides',
        '=====',
        '1. Springs',
        '2. Neaps',
      ),
    ).toEqual([
      't Waves',
      '  t [1.1] Swell {12}',
      '    s State its speed.',
      '    t Derive its limit from k.',
      '      s Sketch the limit.',
      't Tides',
      '  t [1] Springs',
      '  t [2] Neaps',
    ]);
  });

  it('counts a list that says 1 throughout, as it is shown', () => {
    expect(read('# Sea', '## Waves', '1. Deep', '1. Shallow', '## Tides')).toEqual([
      't Waves',
      '  t [1] Deep',
      '  t [2] Shallow',
      't Tides',
    ]);
  });

  it('nests lists that are set in by too little', () => {
    expect(read('# Sea', '## Waves', '1. Deep', '  - State the speed.', '2. Shallow', '## Tides')).toEqual([
      't Waves',
      '  t [1] Deep',
      '    s State the speed.',
      '  t [2] Shallow',
      't Tides',
    ]);
  });

  it('keeps the codes that items name themselves, and joins wrapped lines', () => {
    expect(
      read('# Sea', '## 2 Waves', '- 2.1 The dispersion', '  relation', '- 2.2 Surf', '## 3 Tides'),
    ).toEqual(['t [2] Waves', '  t [2.1] The dispersion relation', '  t [2.2] Surf', 't [3] Tides']);
  });

  it('takes each line of a paragraph for itself', () => {
    expect(read('# Sea', '', '1 Waves', '1.1 Swell', '2 Tides')).toEqual([
      't [1] Waves',
      '  t [1.1] Swell',
      't [2] Tides',
    ]);
  });

  it('names the course by its first heading, and leaves out code, pages of HTML and what stands before it all', () => {
    const { rows, courseName, remarks } = readMarkdown(
      '---\ntitle: x\n---\n# Oceanography\n## Waves\n```\ncode\n```\n<!-- note -->\n- Swell\n## Tides\n',
    );
    expect(courseName).toBe('Oceanography');
    expect(rowsText(rows)).toEqual(['t Waves', '  t Swell', 't Tides']);
    expect(remarks).toEqual([
      { line: 6, about: 'not-outline', text: 'code' },
      { line: 9, about: 'not-outline', text: '' },
    ]);
    expect(rows[0]?.line).toBe(5);
  });

  it('escapes and entities are read as they are shown', () => {
    expect(read('# Sea', '## A \\* B &amp; C', '- 5 &gt; 4', '- x')).toEqual([
      't A * B & C',
      '  t 5 > 4',
      '  t x',
    ]);
  });

  it('of nothing is told', () => {
    expect(() => readMarkdown('\n---\n')).toThrow(new StudentError('errorSyllabusEmpty'));
  });
});
