// @vitest-environment jsdom
import { expect, test } from 'vitest';
import { ProgressReport, progressReport } from '#lib/exchange/progress-report.ts';
import { reportFile, reportIn } from '#lib/exchange/report-file.ts';
import type { ReportSheet } from '#lib/exchange/report-sheet.ts';
import { coverageOf } from '#lib/syllabus/coverage.ts';
import { securedOverall } from '#lib/syllabus/stakes.ts';
import { MORNING, aClip, aCourse, aLesson, aLine, anAttempt, aQuestion, aTopic, newId } from '../builders.ts';

const course = aCourse();
const [deep, tides] = [
  aTopic({ courseId: course.id, order: 0, code: '1.1', title: 'Deep water', share: 60 }),
  aTopic({ courseId: course.id, order: 1, code: '2', title: 'Tides', share: 40 }),
];
const question = aQuestion({ topicId: deep!.id, marks: 2 });
const line = aLine({ topicId: deep!.id });
const clip = aClip({ topicIds: [deep!.id], text: 'SECRET PASSAGE', ownWords: 'SECRET WORDS' });
const items = new Set([question.id, line.id]);
const coverage = coverageOf({
  topics: [deep!, tides!],
  statements: [],
  clips: [clip],
  questions: [question],
  lines: [line],
  lessons: [aLesson({ topicId: tides!.id })],
  attempted: items,
  secured: items,
}).topics;
const tried = (itemId: string, at: number, marks: number, outOf: number) =>
  anAttempt({ topicId: deep!.id, itemId, at, marks, outOf, typed: 'SECRET ANSWER' });
const report = progressReport({
  course,
  topics: [deep!, tides!],
  coverage,
  secured: securedOverall(coverage),
  attempts: [
    tried(question.id, MORNING + 5, 1.5, 2),
    tried(question.id, MORNING, 0, 2),
    tried(line.id, MORNING, 1, 1),
    tried(newId(), MORNING, 1, 1),
  ],
  items,
  questions: 1,
  student: ' A. Student ',
  now: MORNING,
});

test('it names gaps, secured topics and marks, each item as it went the last time', () => {
  expect(ProgressReport.parse(report)).toEqual(report);
  expect(report.topics).toMatchObject([
    {
      title: 'Deep water',
      isSecured: true,
      marks: { got: 2.5, outOf: 3 },
      items: { written: 2, secured: 2 },
      gaps: ['one-source'],
    },
    {
      title: 'Tides',
      isSecured: false,
      marks: null,
      lessons: { held: 0, wanted: 1 },
      gaps: ['no-clip', 'lesson-missing', 'no-question', 'no-line'],
    },
  ]);
  expect(report).toMatchObject({ student: 'A. Student', questions: { written: 1, target: 100 } });
});

const sheet: ReportSheet = {
  title: 'Report: <script>alert(1)</script>',
  lines: ['A & B'],
  securedTitle: 'Secured',
  secured: ['"Deep" water'],
  columns: ['Topic', 'Missing'],
  rows: [{ topic: '<b>Tides</b>', cells: ['</table><img src=x onerror=alert(1)>'] }],
};

const parsed = (html: string): Document => new DOMParser().parseFromString(html, 'text/html');

test('the file reads for people and for programs, and holds nothing of what was kept or written', () => {
  const html = reportFile(report, sheet, 'en');
  expect(reportIn(html)).toEqual(report);
  expect(html).not.toContain('SECRET');
  const document = parsed(html);
  expect(document.querySelector('h1')!.textContent).toBe(sheet.title);
  expect(document.querySelector('td')!.textContent).toBe(sheet.rows[0]!.cells[0]);
  expect(document.querySelectorAll('img, b, script:not([type="application/json"])')).toHaveLength(0);
  expect(document.documentElement.lang).toBe('en');
});

test('a course that is named like the end of a script stays within its block', () => {
  const hostile = {
    ...report,
    student: '</script><script>alert(1)</script><!--',
    course: { ...report.course, name: '\u2028<!--<script>' },
  };
  const html = reportFile(hostile, sheet, 'en');
  expect(reportIn(html)).toEqual(hostile);
  expect(parsed(html).querySelectorAll('script')).toHaveLength(1);
});

test.each(['', '<p>Hello</p>', '<script type="application/json" id="progress-report">{"a":</script>'])(
  'what is no report reads as none: %s',
  (html) => {
    expect(reportIn(html)).toBeNull();
  },
);
