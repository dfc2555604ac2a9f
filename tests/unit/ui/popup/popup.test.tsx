// @vitest-environment jsdom
import { screen, waitFor } from '@testing-library/preact';
import { beforeEach, expect, test, vi } from 'vitest';
import { fakeBrowser } from 'wxt/testing/fake-browser';
import type { Question } from '#lib/model/item.ts';
import { StudentError } from '#lib/model/student-error.ts';
import { Popup } from '#lib/ui/popup/popup.tsx';
import * as standings from '#lib/ui/derive/next-up.ts';
import { rememberTrouble } from '#lib/ui/trouble.ts';
import { aQuestion, aReason, MORNING } from '../../builders.ts';
import { clipOf, course, courseRows, deep, shallow, tides } from '../a-course.ts';
import { answerWith } from '../fake-extension.ts';
import { deckWith, freshScreens, renderInDeck, type Rows } from '../render-in-deck.tsx';
import { choose, key, press, read, see } from '../student.ts';

vi.mock('#lib/ui/derive/next-up.ts', { spy: true });
freshScreens();
beforeEach(() => void vi.mocked(standings.readBriefStanding).mockReset());

async function openPopup(rows: Rows = {}) {
  const db = await deckWith(rows);
  renderInDeck(<Popup />);
  return db;
}
const href = async (name: string) => (await see('link', name)).getAttribute('href');
const deskAt = (path: string) => `chrome-extension://test-extension-id/desk.html#/${path}`;
const tabBelow = (...ids: number[]) =>
  vi.spyOn(fakeBrowser.tabs, 'query').mockImplementation(async () => ids.map((id) => ({ id })) as never);
const cached = ({ id }: Question, seconds = 12) => ({
  kind: 'question' as const,
  id,
  reason: aReason({ seconds, isForExam: false }),
});
const questions = [
  aQuestion({ courseId: course.id, topicId: tides.id, prompt: 'Which force raises the tides?' }),
  aQuestion({ courseId: course.id, topicId: deep.id }),
];

test('without a course it leads to starting one', async () => {
  await openPopup();
  await see('heading', 'Plumbline');
  expect(await href('Start a course')).toBe(deskAt('course'));
  expect(screen.queryByRole('button')).toBeNull();
});

test('with a course but no syllabus it asks for the syllabus', async () => {
  await openPopup(courseRows({ topics: [] }));
  await see('heading', 'Foundation Oceanography');
  expect(await href('Bring in the syllabus to see what is missing')).toBe(deskAt('syllabus'));
});

test('without clips it says how to keep one, and how many topics have nothing', async () => {
  await openPopup(courseRows());
  await read(/^Nothing kept yet\./);
  await read(/^3 of 3 topics have nothing yet\./);
  expect(await href('See the gaps')).toBe(deskAt('coverage'));
});

test('with clips but no questions it leads to writing one from the clip that was kept last', async () => {
  const clips = [3, 9, 5].map((hour) => clipOf({ createdAt: MORNING + hour * 3_600_000 }));
  await openPopup(courseRows({ clips }));
  await read(/^Nothing to recall yet\./);
  expect(await href('Write a question')).toBe(deskAt(`clip/${clips[1]!.id}`));
});

test('when every topic has a clip, nothing is said to be missing', async () => {
  await openPopup(courseRows({ clips: [clipOf({ topicIds: [deep.id, shallow.id, tides.id] })], questions }));
  await read(/^Every topic has something\./);
});

test('it shows what gains most, and why, in numbers', async () => {
  const db = await openPopup(courseRows({ questions }));
  const next = await see('region', 'Gains most now');
  await waitFor(() => expect(next.textContent).toMatch(/It stands for \d+ of 100 exam marks/));
  const [first] = (await db.get('nextUp', course.id))!.items;
  expect(next.textContent).toContain(questions.find(({ id }) => id === first!.id)!.prompt);
});

test('it opens on what it kept from the last time, and the round begins with that', async () => {
  const kept = questions[1]!;
  const nextUp = [{ courseId: course.id, at: MORNING, items: [cached(kept)] }];
  await openPopup(courseRows({ questions, nextUp }));
  const next = await see('region', 'Gains most now');
  expect(next.textContent).toContain(kept.prompt);
  expect(next.textContent).toContain('1.1 Deep water');
  await press(/^Start a 2-minute round/);
  await see('region', 'Recall round');
  await read(kept.prompt);
});

/** Questions whose cached times last for a two-minute round, and the cache with them. */
const manyCached = () => {
  const many = Array.from({ length: 12 }, (_, i) =>
    aQuestion({ courseId: course.id, topicId: [deep, tides][i % 2]!.id, prompt: `Question ${i}?` }),
  );
  const items = many.map((one) => cached(one, 20));
  return { many, nextUp: [{ courseId: course.id, at: MORNING, items }] };
};

/** Holds up what reads the whole course, as a large deck does. */
const holdUpStanding = () =>
  vi.mocked(standings.readBriefStanding).mockReturnValue(new Promise<undefined>(() => undefined));

test('a round starts from the cache, in its order and with its reasons, while the deck is still being read', async () => {
  holdUpStanding();
  const { many, nextUp } = manyCached();
  const db = await openPopup(courseRows({ questions: many, nextUp }));
  await press(/^Start a 2-minute round/);
  for (const { prompt } of many.slice(0, 2)) {
    await read(prompt);
    await read(/^It stands for 6.7 of 100 exam marks/);
    key('Enter');
    await see('group', 'How many marks?');
    key('f');
  }
  await read(many[2]!.prompt);
  await read('1.1 Deep water');
  expect(await db.count('attempts')).toBe(2);
});

test('another round goes on from the cache, with nothing twice, while the deck is still being read', async () => {
  holdUpStanding();
  const { many, nextUp } = manyCached();
  await openPopup(courseRows({ questions: many, nextUp }));
  await press(/^Start a 2-minute round/);
  await read(many[0]!.prompt);
  key('Enter');
  await see('group', 'How many marks?');
  key('n');
  await read(many[1]!.prompt);
  await press('Stop here');
  await press('Another round');
  await read(many[1]!.prompt);
  expect(screen.queryByText(many[0]!.prompt)).toBeNull();
});

test('what a reading from before the round put back into the cache is not asked again', async () => {
  holdUpStanding();
  const { many, nextUp } = manyCached();
  const db = await openPopup(courseRows({ questions: many, nextUp }));
  await press(/^Start a 2-minute round/);
  await read(many[0]!.prompt);
  key('Enter');
  await see('group', 'How many marks?');
  key('f');
  await read(many[1]!.prompt);
  await press('Stop here');
  await db.put('nextUp', nextUp[0]!);
  await press('Another round');
  await read(many[1]!.prompt);
  expect(screen.queryByText(many[0]!.prompt)).toBeNull();
});

test('with a cache too short for the round it waits until the deck is read', async () => {
  holdUpStanding();
  const nextUp = [{ courseId: course.id, at: MORNING, items: questions.map((one) => cached(one)) }];
  await openPopup(courseRows({ questions, nextUp }));
  const start = (await see('button', /^Start a 2-minute round/)) as HTMLButtonElement;
  expect(start.disabled).toBe(true);
});

test('a cache that speaks of an exam in the past starts no round by itself', async () => {
  holdUpStanding();
  const { many, nextUp } = manyCached();
  const [row] = nextUp;
  const past = row!.items.map((one) => ({ ...one, reason: aReason({ seconds: 20, aimAt: MORNING - 1 }) }));
  await openPopup(courseRows({ questions: many, nextUp: [{ ...row!, items: past }] }));
  const start = (await see('button', /^Start a 2-minute round/)) as HTMLButtonElement;
  expect(start.disabled).toBe(true);
});

test('another round can be chosen, and goes on as chosen', async () => {
  await openPopup(courseRows({ questions }));
  await press('Choose another round');
  await choose('What to recall', '2 Tides');
  await choose('Length of a round', '7 minutes');
  await press('Start a 7-minute round');
  await read('7:00');
  await read('Which force raises the tides?');
  await press('Stop here');
  await press('Another round');
  await read('7:00');
  await read('Which force raises the tides?');
});

test('a round from start to end: Enter starts it with the item shown, and what was marked is kept', async () => {
  const db = await openPopup(courseRows({ questions }));
  const start = await see('button', /^Start a 2-minute round/);
  await waitFor(() => expect(document.activeElement).toBe(start));
  const shown = questions.find(({ prompt }) => screen.queryByText(prompt))!;
  key('Enter');
  await see('region', 'Recall round');
  for (const { prompt, answer } of [shown, questions.find((one) => one !== shown)!]) {
    await read(prompt);
    key('Enter');
    await read(answer);
    key('f');
  }
  await see('heading', '2 of 2 marks');
  expect((await db.getAll('attempts')).map(({ itemId }) => itemId).sort()).toEqual(
    questions.map(({ id }) => id).sort(),
  );
});

test('another round follows, of the length that was set meanwhile', async () => {
  const db = await openPopup(courseRows({ questions }));
  await press(/^Start a 2-minute round/);
  await press('Stop here');
  await db.put('settings', { ...(await db.get('settings', 'settings'))!, roundMinutes: 5 }, 'settings');
  await press('Another round');
  await read('5:00');
});

test('when another round cannot be had, the popup says why', async () => {
  await openPopup(courseRows({ questions }));
  await press(/^Start a 2-minute round/);
  await press('Stop here');
  vi.spyOn(IDBDatabase.prototype, 'transaction').mockImplementation(() => {
    throw new Error('the disk is gone');
  });
  await press('Another round');
  expect((await see('alert')).textContent).toContain('the disk is gone');
});

test('trouble from elsewhere is told once the popup opens', async () => {
  await rememberTrouble(new StudentError('errorSelectionEmpty'));
  await openPopup(courseRows());
  expect((await see('alert')).textContent).toMatch(/^Nothing is selected/);
});

test('the button opens the slip in the tab below and the popup goes', async () => {
  const closed = vi.spyOn(window, 'close').mockImplementation(() => undefined);
  tabBelow(7);
  const came = answerWith(() => ({ ok: true, value: null }));
  await openPopup(courseRows());
  await press('Keep the selected passage');
  await waitFor(() => expect(closed).toHaveBeenCalledTimes(1));
  expect(came).toEqual([{ name: 'clipTab', data: { tabId: 7, wish: 'selection' } }]);
});

test('where the browser lets no extension in, the popup stays and says so', async () => {
  const closed = vi.spyOn(window, 'close').mockImplementation(() => undefined);
  tabBelow(7);
  answerWith(() => ({ ok: false, error: 'errorPageClosed', values: [] }));
  await openPopup(courseRows());
  await press('Keep the selected passage');
  expect((await see('alert')).textContent).toMatch(/^The browser lets no extension read this page/);
  expect(closed).not.toHaveBeenCalled();
});

test('without a tab below nothing is sent', async () => {
  tabBelow();
  const came = answerWith(() => ({ ok: true, value: null }));
  await openPopup(courseRows());
  await press('Keep the selected passage');
  expect((await see('alert')).textContent).toMatch(/^The browser lets no extension read this page/);
  expect(came).toEqual([]);
});
