// @vitest-environment jsdom
import { screen, within } from '@testing-library/preact';
import { expect, test, vi } from 'vitest';
import { reportIn } from '#lib/exchange/report-file.ts';
import { anAttempt, aQuestion } from '../../builders.ts';
import { clipOf, course, courseRows, tides } from '../a-course.ts';
import { freshScreens, openDesk } from '../render-in-deck.tsx';
import { follow, press, read, see, type } from '../student.ts';

freshScreens();

const place = { courseId: course.id, topicId: tides.id };
const question = aQuestion({ ...place, prompt: 'When do spring tides come?', marks: 3 });
const attempt = anAttempt({ ...place, itemId: question.id, marks: 2, outOf: 3 });
const clip = clipOf({ topicIds: [tides.id], text: 'Two bulges, one turn a day.' });
const rows = courseRows({ questions: [question], attempts: [attempt], clips: [clip] });

test('it is reached from the coverage and shows what it hands on, and nothing of what was kept', async () => {
  await openDesk('coverage', rows);
  await read('Questions written: 1 of about 100.');
  await follow('Progress report');
  await see('heading', 'Progress report: Foundation Oceanography');
  const row = within((await see('rowheader', '2 Tides')).closest('tr')!);
  expect(row.getAllByRole('cell').map(({ textContent }) => textContent)).toEqual([
    '50%',
    '0%',
    '2 of 3',
    'no own words, one source only, no note line, not secured yet',
  ]);
  await see('heading', 'Secured topics: 0 of 3');
  expect(document.body.textContent).not.toMatch(/bulges|spring tides/);
  const printed = vi.fn();
  vi.stubGlobal('print', printed);
  await press('Print');
  expect(printed).toHaveBeenCalledTimes(1);
});

test('the file holds what is on the screen, with the name that the student gave', async () => {
  let blob: Blob | undefined;
  vi.spyOn(URL, 'createObjectURL').mockImplementation((given) => {
    blob = given as Blob;
    return 'blob:x';
  });
  vi.spyOn(HTMLAnchorElement.prototype, 'click').mockImplementation(() => undefined);
  await openDesk('report', rows);
  await type('Your name (in the report only)', 'A. Student');
  await read('Student: A. Student');
  await press('Save as a file');
  await read('Saved: Foundation Oceanography progress report.html');
  const html = await blob!.text();
  expect(reportIn(html)).toMatchObject({ student: 'A. Student', topics: { length: 3 } });
  const file = new DOMParser().parseFromString(html, 'text/html');
  const cells = (table: ParentNode) => [...table.querySelectorAll('td, th')].map((cell) => cell.textContent);
  expect(cells(file)).toEqual(cells(screen.getByRole('table')));
});
