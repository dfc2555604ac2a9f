import { expect, test } from 'vitest';
import { Clip } from '#lib/model/clip.ts';
import { Course } from '#lib/model/course.ts';
import { itemOfLine, itemOfQuestion, LINE_MARKS } from '#lib/model/item.ts';
import { WebAddress } from '#lib/model/source.ts';
import { aClip, aCourse, aLine, aQuestion } from '../builders.ts';

test.each([
  'https://lagoonery.invalid/waves',
  'http://127.0.0.1/a?b=c',
  'file:///home/me/tides.html',
  'HTTP://X.invalid',
])('%s is an address that a clip may lead back to', (address) => {
  expect(WebAddress.safeParse(address).success).toBe(true);
});

test.each([
  'javascript:alert(1)',
  'data:text/html,x',
  'chrome-extension://x/desk.html',
  'about:blank',
  'waves',
  '',
])('“%s” is none', (address) => {
  expect(WebAddress.safeParse(address).success).toBe(false);
});

test.each(['2026-02-30', '14.05.2026', '2026-5-14', ''])('“%s” is no exam day', (examDay) => {
  expect(Course.safeParse(aCourse({ examDay })).success).toBe(false);
});

test('a course may have no exam day yet, and its name is trimmed', () => {
  expect(Course.parse(aCourse({ examDay: null, name: ' Oceanography ' }))).toMatchObject({
    examDay: null,
    name: 'Oceanography',
  });
});

test('a clip holds something, and no more than it may', () => {
  expect(Clip.safeParse(aClip()).success).toBe(true);
  expect(Clip.safeParse(aClip({ text: '  ' })).success).toBe(false);
  expect(Clip.safeParse(aClip({ text: 'x'.repeat(100_001) })).success).toBe(false);
});

test('questions and lines are asked in one shape: a line counts one mark', () => {
  const [question, line] = [aQuestion({ marks: 3 }), aLine()];
  expect(itemOfQuestion(question)).toMatchObject({
    asks: question.prompt,
    covers: question.answer,
    marks: 3,
  });
  expect(itemOfLine(line)).toMatchObject({ asks: line.lead, covers: line.rest, marks: LINE_MARKS });
});
