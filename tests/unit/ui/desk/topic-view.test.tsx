// @vitest-environment jsdom
import { screen, waitFor } from '@testing-library/preact';
import { describe, expect, test } from 'vitest';
import type { Attempt } from '#lib/model/attempt.ts';
import type { Statement } from '#lib/model/topic.ts';
import { aLine, anAttempt, aQuestion, MORNING, newId } from '../../builders.ts';
import { clipOf, course, courseRows, deep, tides, waves } from '../a-course.ts';
import { freshScreens, openDesk } from '../render-in-deck.tsx';
import { follow, press, read, see, type } from '../student.ts';

freshScreens();

const statement = (text: string, order: number): Statement => ({
  id: newId(),
  courseId: course.id,
  topicId: deep.id,
  createdAt: MORNING,
  changedAt: MORNING,
  order,
  code: '',
  text,
  group: '',
  off: false,
});
const clip = clipOf({ text: 'In deep water ω² = gk.', ownWords: 'Long ones win.', unclear: true });

test('it says what the syllabus asks, in its order, what was kept, and how it stands', async () => {
  const statements = [statement('Sketch the orbits.', 3), statement('State the dispersion relation.', 2)];
  await openDesk(`topic/${deep.id}`, courseRows({ statements, clips: [clip] }));
  await see('heading', '1.1 Deep water');
  await see('heading', '1 clip');
  const asked = [...document.querySelectorAll('.topic-asks > li > p')].map(({ textContent }) =>
    textContent!.trim(),
  );
  expect(asked).toEqual(['State the dispersion relation.', 'Sketch the orbits.']);
  await read('own words: 0 of 1');
  await read('Long ones win.');
  expect(screen.getByRole('link', { name: 'In deep water ω² = gk.' }).getAttribute('href')).toBe(
    `#/clip/${clip.id}`,
  );
});

test('a topic without statements says so', async () => {
  await openDesk(`topic/${tides.id}`, courseRows());
  await read('The syllabus says no more than its title.');
  await see('heading', '0 clips');
});

test('a topic above others leads to them', async () => {
  await openDesk(`topic/${waves.id}`, courseRows());
  await see('heading', '1 Waves at sea');
  expect(screen.queryByRole('heading', { name: 'How it stands' })).toBeNull();
  await follow('1.2 Shallow water');
  await see('heading', '1.2 Shallow water');
});

test('what is written here comes from no clip', async () => {
  const db = await openDesk(`topic/${tides.id}`, courseRows());
  await type('Question', 'When do spring tides come?');
  await type('Answer', 'At new and full moon.');
  await press('Add the question');
  await read('When do spring tides come?');
  await type('Lead', 'Neap tides');
  await type('Rest', 'come at the quarters');
  await press('Add the line');
  await read('Neap tides');
  expect(await db.getAll('questions')).toMatchObject([{ topicId: tides.id, clipId: null }]);
  expect(await db.getAll('lines')).toMatchObject([{ topicId: tides.id, clipId: null }]);
});

test('it can be aimed at from here', async () => {
  const db = await openDesk(`topic/${tides.id}`, courseRows());
  await press('Aim the next clip here');
  await waitFor(async () => expect((await db.get('settings', 'settings'))!.aimedTopicId).toBe(tides.id));
  await read('The next passage you keep goes under this topic.');
});

test('a topic that is not there says so', async () => {
  await openDesk(`topic/${newId()}`, courseRows());
  await see('heading', 'a topic that is gone');
});

test('a topic that is switched off or was dropped says so, and what it does not ask is not shown', async () => {
  const statements = [{ ...statement('Explain the limit.', 0), group: 'HL', off: true }];
  const topics = [waves, { ...deep, off: true }, { ...tides, off: true, dropped: true }];
  await openDesk(`topic/${deep.id}`, courseRows({ topics, statements }));
  await read(/^You do not sit this topic/);
  expect(screen.queryByText('Explain the limit.')).toBeNull();
  location.hash = `#/topic/${tides.id}`;
  await read(/^The syllabus has this topic no longer/);
});

test('how its items are being forgotten, and each of them, with the attempts', async () => {
  const question = aQuestion({ courseId: course.id, topicId: deep.id, prompt: 'Which waves win?' });
  const at = Date.now() - 3 * 86_400_000;
  const attempts = [1, 0, 0.5].map((marks, i) =>
    anAttempt({ courseId: course.id, itemId: question.id, marks, at: at + i * 86_400_000 }),
  );
  await openDesk(`topic/${waves.id}`, courseRows({ questions: [question], attempts }));
  const chart = await see('img', /^A falling curve .* Attempts marked on it: 3\.$/);
  expect(chart.querySelectorAll('path.mark')).toHaveLength(3);
  await follow('1.1 Deep water');
  await see('heading', '1.1 Deep water');
  await see('heading', 'How it is being forgotten');
  expect(screen.getAllByRole('img', { name: /^A falling curve/ })).toHaveLength(1);
  const details = (await screen.findAllByText('How it is being forgotten')).at(-1)!.closest('details')!;
  details.open = true;
  await waitFor(() => expect(details.querySelectorAll('path.mark')).toHaveLength(3));
  expect(details.textContent).toMatch(/Chance of full marks: \d+% today, \d+% on .* if nothing more/);
});

test('a topic with nothing to recall has no curve', async () => {
  await openDesk(`topic/${tides.id}`, courseRows());
  await see('heading', '0 clips');
  expect(screen.queryByRole('heading', { name: 'How it is being forgotten' })).toBeNull();
});

describe('below an item stands what it lacks to be secured', () => {
  const DAY = 86_400_000;
  const line = aLine({ courseId: course.id, topicId: deep.id });
  const tried = (over: Partial<Attempt>) =>
    anAttempt({ courseId: course.id, topicId: deep.id, itemId: line.id, itemKind: 'line', ...over });

  test('a line recalled as the notes stand only', async () => {
    const attempts = [0, 1].map((day) => tried({ at: MORNING + day * DAY, order: 'forward' }));
    await openDesk(`topic/${deep.id}`, courseRows({ lines: [line], attempts }));
    await read('To be secured: full marks on 1 more day; still to be recalled back to front.');
  });

  test('a line missed the last time, long before the exam', async () => {
    const attempts = [0, 1, 2, 3].map((day) =>
      tried({ at: MORNING + day * DAY, order: 'backToFront', marks: day < 3 ? 1 : 0 }),
    );
    await openDesk(`topic/${deep.id}`, courseRows({ lines: [line], attempts }));
    await read(
      'To be secured: full marks the next time; still to be recalled as the notes stand; a chance of 90% on exam day, which further recalls bring.',
    );
  });

  test('nothing for one never tried', async () => {
    await openDesk(`topic/${deep.id}`, courseRows({ lines: [line] }));
    await read(line.rest);
    expect(screen.queryByText(/To be secured/)).toBeNull();
  });
});
