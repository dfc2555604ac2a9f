import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import type { CoursePack } from '#lib/exchange/course-pack.ts';
import { reportIn } from '#lib/exchange/report-file.ts';
import type { Lesson } from '#lib/model/lesson.ts';
import type { Question } from '#lib/model/item.ts';
import type { Topic } from '#lib/model/topic.ts';
import { type AnyDriver, BROWSERS, dropFile, filesOf, rowsOf } from '#tests/tools/demo/pdfs/reader.ts';
import { downloadOf } from '#tests/tools/downloads.ts';
import { click, fill, sees, textOf, until } from '#tests/tools/driver.ts';
import { bringInSyllabus } from '#tests/tools/main-job.ts';

const SYLLABUS =
  '1 Waves\n1.1 Deep water (60 %)\n(a) State the dispersion relation.\n(b) Sketch the orbits.\n1.2 Swell (40 %)\n2 Tides';

describe.each(BROWSERS)('a course goes from teacher to student and back, in %s,', (_name, drive) => {
  let driver: AnyDriver;
  let pack: CoursePack;
  let files: Awaited<ReturnType<typeof filesOf>>;

  beforeAll(async () => {
    driver = await drive();
    await bringInSyllabus(driver, SYLLABUS);
  });
  afterAll(async () => {
    await driver?.close();
    await files?.remove();
  });

  const goTo = async (hash: string, text: string) => {
    await driver.tab.gotoDesk(hash);
    await sees(driver.tab, text);
  };
  const goToTopic = async (code: string) => {
    const topics = await rowsOf<Topic>(driver.tab, 'topics');
    await goTo(`#/topic/${topics.find((one) => one.code === code)!.id}`, 'What the syllabus asks');
  };
  const pickPack = async (name: string) => {
    if ('firefox' in driver) await (await driver.firefox.find('#pack-file')).type(files.path(name));
    else await driver.page.setInputFiles('#pack-file', files.path(name));
  };
  /** Clicks the box with this label. */
  const tick = async (label: string) => {
    const point = await until(`a box “${label}”`, () =>
      driver.tab.run((wanted) => {
        const box = [...document.querySelectorAll<HTMLInputElement>('input[type=checkbox]')].find(
          (one) => one.checkVisibility() && one.labels![0]!.innerText.trim() === wanted,
        );
        box?.scrollIntoView({ block: 'center', behavior: 'instant' });
        const place = box?.getBoundingClientRect();
        return place && { x: place.x + place.width / 2, y: place.y + place.height / 2 };
      }, label),
    );
    await driver.tab.clickAt(point.x, point.y);
  };

  test('the teacher enters lessons by keyboard and a question on a statement, and saves the pack', async () => {
    await goTo('#/lessons', 'To chase');
    for (const title of ['The dispersion relation', 'Orbits of water']) {
      await fill(driver.tab, 'Title', title);
      await driver.tab.press('Enter');
      await sees(driver.tab, `Added: ${title}`);
    }
    await goToTopic('1.1');
    await fill(driver.tab, 'Question', 'What is the dispersion relation?', '.write-question');
    await fill(driver.tab, 'Answer', 'ω² = gk tanh kh', '.write-question');
    await click(driver.tab, 'Statements it answers: 0 of 2', '.write-question');
    await tick('(a) State the dispersion relation.');
    await click(driver.tab, 'Add the question');
    await until('the statement to be asked', async () =>
      (await textOf(driver.tab)).includes('asked by questions and lines: 1'),
    );
    await goTo('#/course', 'Hand this course to a class');
    const { name, text } = await downloadOf(driver, () => click(driver.tab, 'Save as a course pack'));
    expect(name).toBe('Foundation Oceanography course pack.json');
    pack = JSON.parse(text) as CoursePack;
    expect(pack.topics.map(({ title }) => title)).toEqual(['Waves', 'Deep water', 'Swell', 'Tides']);
    expect(pack.questions).toHaveLength(1);
    const ice = { ...pack.topics[3]!, id: crypto.randomUUID(), order: 9, code: '3', title: 'Sea ice' };
    const update: CoursePack = {
      ...pack,
      savedAt: pack.savedAt + 1,
      topics: [...pack.topics.slice(0, 3), { ...pack.topics[3]!, title: 'Tides and surges' }, ice],
      questions: pack.questions.map((one) => ({ ...one, answer: 'Another answer' })),
      lessons: pack.lessons.slice(0, 1),
    };
    files = await filesOf({
      'pack.json': Buffer.from(text),
      'update.json': Buffer.from(JSON.stringify(update)),
      'cut.json': Buffer.from(text.slice(0, text.length / 2)),
    });
  });

  test('a student without a course opens it', async () => {
    await driver.close();
    driver = await drive();
    await goTo('', 'Course pack from a teacher');
    await pickPack('cut.json');
    await sees(driver.tab, 'This course pack breaks off or is damaged');
    await pickPack('pack.json');
    await sees(driver.tab, 'This is a new course.');
    expect(await rowsOf(driver.tab, 'courses')).toEqual([]);
    await click(driver.tab, 'Take it in');
    await sees(driver.tab, 'lessons, sheets, homework: 0 of 2');
    expect(await rowsOf<Question>(driver.tab, 'questions')).toMatchObject([
      { prompt: 'What is the dispersion relation?', clipId: null },
    ]);
  });

  test('chases what is missing, and holds what is there', async () => {
    await goTo('#/lessons', 'To chase');
    await tick('Lesson: Orbits of water');
    await until('it to be held', async () =>
      (await rowsOf<Lesson>(driver.tab, 'lessons')).some(({ held }) => held),
    );
    await click(driver.tab, 'Copy as a message');
    await sees(driver.tab, 'Copied.');
    expect(await textOf(driver.tab)).toContain('1 of 2 held');
  });

  test('takes in an update that is dropped on the page, and keeps what was changed and is held', async () => {
    await goToTopic('1.1');
    await click(driver.tab, 'Change: What is the dispersion relation?');
    await fill(driver.tab, 'Answer', 'My own words', '.items');
    await click(driver.tab, 'Save', '.items');
    await sees(driver.tab, 'My own words');
    await goTo('#/course', 'Open a course pack');
    await dropFile(driver, files.path('update.json'), 'update.json');
    for (const text of [
      'Topics added: 1',
      'Topics changed: 1',
      'Questions that you changed, kept in your words: 1',
      'Lessons, sheets and homework dropped, but kept because you changed or used them: 1',
    ])
      await sees(driver.tab, text);
    await click(driver.tab, 'Take it in');
    await sees(driver.tab, 'The course pack is taken in.');
    expect(await rowsOf<Question>(driver.tab, 'questions')).toMatchObject([{ answer: 'My own words' }]);
    expect(await rowsOf<Lesson>(driver.tab, 'lessons')).toHaveLength(2);
    await goTo('#/coverage', '3 Sea ice');
    await sees(driver.tab, '2 Tides and surges');
  });

  test('hands back a report that a browser shows and a program reads', async () => {
    await goTo('#/report', 'Secured topics: 0 of 4');
    await fill(driver.tab, 'Your name (in the report only)', 'A. Student');
    const { name, text } = await downloadOf(driver, () => click(driver.tab, 'Save as a file'));
    expect(name).toBe('Foundation Oceanography progress report.html');
    expect(reportIn(text)).toMatchObject({ student: 'A. Student', topics: { length: 4 } });
    const shown = await filesOf({ 'report.html': Buffer.from(text) });
    await driver.tab.goto(`file://${shown.path('report.html')}`);
    await sees(driver.tab, 'Student: A. Student');
    await sees(driver.tab, 'no explanation kept');
    await shown.remove();
  });
});
