// @vitest-environment jsdom
import { screen, waitFor } from '@testing-library/preact';
import { beforeEach, expect, test, vi } from 'vitest';
import { aLine, aQuestion } from '../../builders.ts';
import { course, courseRows, deep, tides, waves } from '../a-course.ts';
import { freshScreens, openDesk } from '../render-in-deck.tsx';
import { choose, follow, press, read, see } from '../student.ts';

freshScreens();

// jsdom has no place for constructed style sheets, and does not know the size of a page.
beforeEach(() => {
  Object.assign(document, { adoptedStyleSheets: [] });
  vi.spyOn(CSSStyleSheet.prototype, 'replaceSync').mockImplementation(function (this: CSSStyleSheet, text) {
    rules.set(this, text);
  });
});

const inCourse = { courseId: course.id };
const lines = [
  aLine({ ...inCourse, topicId: deep.id, lead: 'Deep-water speed', rest: 'grows with the wavelength' }),
  aLine({ ...inCourse, topicId: deep.id, lead: 'Known', rest: 'long ago', leftOut: 'known', order: 1 }),
];
const questions = [
  aQuestion({
    ...inCourse,
    topicId: tides.id,
    prompt: 'How long is a lunar day?',
    answer: '24.84 h',
    marks: 2,
  }),
];
const rows = courseRows({ lines, questions });
const pages = () => [...document.querySelectorAll<HTMLElement>('.print-page')];
const rules = new WeakMap<CSSStyleSheet, string>();
const adopted = () => document.adoptedStyleSheets.map((sheet) => rules.get(sheet));

test('the notes as they will be printed, reached from the course', async () => {
  await openDesk('course', rows);
  await follow('Print notes and questions');
  await read('1 side of A4. You aim at 8 at most.');
  expect(pages()).toHaveLength(1);
  const side = await see('region', 'Page 1 of 1');
  expect(side.textContent).toContain('Foundation Oceanography');
  expect([...side.querySelectorAll('h2, h3')].map(({ textContent }) => textContent)).toEqual([
    `${waves.code} ${waves.title}`,
    `${deep.code} ${deep.title}`,
  ]);
  expect(side.textContent).toContain('Deep-water speed grows with the wavelength');
  expect(side.textContent).not.toContain('long ago');
  expect(document.title).toBe('Foundation Oceanography · Notes');
});

test('the print button prints', async () => {
  await openDesk('print', rows);
  const printed = vi.fn();
  vi.stubGlobal('print', printed);
  await press('Print');
  expect(printed).toHaveBeenCalledTimes(1);
});

test('paper and columns are kept with the course, and the browser is told of the paper', async () => {
  const db = await openDesk('print', rows);
  await read('1 side of A4. You aim at 8 at most.');
  expect(adopted()).toEqual(['@page { size: 210mm 297mm; margin: 0 }']);
  await choose('Paper', 'US Letter');
  await read('1 side of US Letter. You aim at 8 at most.');
  expect(adopted()).toEqual(['@page { size: 215.9mm 279.4mm; margin: 0 }']);
  await choose('Columns', '1');
  await waitFor(async () =>
    expect(await db.get('courses', course.id)).toMatchObject({ paper: 'letter', columns: 1 }),
  );
  await waitFor(() => expect(document.querySelectorAll('.print-column.placed')).toHaveLength(1));
});

test('to be covered: leads and rests in cells of their own, in one column', async () => {
  await openDesk('print', rows);
  await choose('What', 'Notes to cover up');
  await read(/Lay a strip of paper/);
  const cells = [...document.querySelectorAll('.print-page .print-line .print-cell')];
  expect(cells.map(({ textContent }) => textContent)).toEqual([
    'Deep-water speed',
    'grows with the wavelength',
  ]);
  expect(screen.queryByLabelText('Columns')).toBeNull();
  expect(document.title).toBe('Foundation Oceanography · Notes to cover up');
});

test('questions on the front, answers with the same numbers on the back', async () => {
  await openDesk('print', rows);
  await choose('What', 'Questions with answers on the back');
  await read(/^1 sheet of A4, printed on both sides/);
  expect(pages().map(({ textContent }) => textContent)).toEqual([
    expect.stringMatching(/Questions.*1 {2}2 Tides · 2 marks\s+How long is a lunar day\?/),
    expect.stringMatching(/Answers.*1\s+24\.84 h/),
  ]);
});

test('with nothing written there is nothing to print', async () => {
  await openDesk('print', courseRows());
  await read('There are no lines to print yet.');
  expect(pages()).toHaveLength(0);
  expect(((await see('button', 'Print')) as HTMLButtonElement).disabled).toBe(true);
  await choose('What', 'Questions with answers on the back');
  await read('There are no questions to print yet.');
});

test('elsewhere the page has its own name again, and the paper is the browser’s', async () => {
  const before = document.title;
  await openDesk('print', rows);
  await waitFor(() => expect(document.title).toContain('Notes'));
  await follow('Lessons');
  await waitFor(() => expect(document.title).toBe(before));
  expect(document.adoptedStyleSheets).toEqual([]);
  expect(document.querySelector('.print-measure')).toBeNull();
});
