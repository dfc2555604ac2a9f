// @vitest-environment jsdom
import { act, screen, waitFor } from '@testing-library/preact';
import { expect, test, vi } from 'vitest';
import { changeClip } from '#lib/store/actions/clips.ts';
import { newId } from '../../builders.ts';
import { clipOf, courseRows, deep, tides } from '../a-course.ts';
import { freshScreens, openDesk, type Rows } from '../render-in-deck.tsx';
import { choose, follow, press, read, see, type } from '../student.ts';

freshScreens();

const clip = clipOf({
  text: 'In deep water ω² = gk.',
  html: '<p>In deep water <b>ω² = gk</b>.</p><script>alert(1)</script>',
});
const openClip = (over: Partial<typeof clip> = {}, more: Rows = {}) =>
  openDesk(`clip/${clip.id}`, courseRows({ clips: [{ ...clip, ...over }], ...more }));
type Db = Awaited<ReturnType<typeof openDesk>>;
const kept = (db: Db) => db.get('clips', clip.id);
const words = () => screen.getByLabelText<HTMLTextAreaElement>('In your own words');

test('the passage stands as it was kept, without what could act, and leads back to its page', async () => {
  await openClip();
  const passage = await see('region', 'The passage');
  expect(passage.textContent).toBe('In deep water ω² = gk.');
  expect(passage.querySelector('b')).not.toBeNull();
  expect(passage.querySelector('script')).toBeNull();
  const link = screen.getByRole('link', { name: 'How waves travel' });
  expect(link.getAttribute('href')).toBe(
    'http://127.0.0.1/waves#:~:text=Long%20waves%20outrun%20short%20ones',
  );
  expect(link.getAttribute('rel')).toContain('noopener');
});

test('own words are saved while they are written', async () => {
  const db = await openClip();
  await type('In your own words', 'The longer the wave, the faster.');
  await read('Saving …');
  await read('Saved');
  expect(await kept(db)).toMatchObject({ ownWords: 'The longer the wave, the faster.' });
});

/** Takes the pause away after which words are saved by themselves: something else must save them. */
function withoutPause(): void {
  const later = globalThis.setTimeout;
  vi.spyOn(globalThis, 'setTimeout').mockImplementation(((work: () => void, ms?: number) =>
    ms === 500 ? 0 : later(work, ms)) as never);
}

test.each([
  ['the field is left', (field: HTMLElement) => field.blur()],
  ['the page is left for another', () => void (location.hash = '#/coverage')],
  ['the tab is closed', () => void act(() => void dispatchEvent(new Event('pagehide')))],
])('they are saved at once when %s', async (_when, leave) => {
  withoutPause();
  const db = await openClip();
  leave(await type('In your own words', 'The longer, the faster.'));
  await waitFor(async () => expect(await kept(db)).toMatchObject({ ownWords: 'The longer, the faster.' }));
});

test('a clip that was only looked at is not touched', async () => {
  const db = await openClip({ ownWords: 'At first.' });
  (await screen.findByLabelText('In your own words')).focus();
  dispatchEvent(new Event('pagehide'));
  await follow('Coverage');
  await see('table');
  expect(await kept(db)).toMatchObject({ ownWords: 'At first.', changedAt: clip.changedAt });
});

test('words written elsewhere meanwhile come in, and leaving the page does not undo them', async () => {
  const db = await openClip({ ownWords: 'At first.' });
  await type('In your own words', 'Then.');
  await read('Saved');
  await changeClip(db, clip.id, { ownWords: 'On the slip.' }, Date.now());
  await waitFor(() => expect(words().value).toBe('On the slip.'));
  dispatchEvent(new Event('pagehide'));
  await follow('Coverage');
  await see('table');
  expect(await kept(db)).toMatchObject({ ownWords: 'On the slip.' });
});

test('when saving fails the words stay in the field, and the student is told', async () => {
  const db = await openClip();
  await screen.findByLabelText('In your own words');
  await db.delete('clips', clip.id);
  await type('In your own words', 'The longer, the faster.');
  expect((await see('alert')).textContent).toMatch(/^That clip is not here any more/);
  expect(words().value).toBe('The longer, the faster.');
});

test('it is put under another topic and taken away from one', async () => {
  const db = await openClip();
  await choose('Put it under another topic', '2 Tides');
  await press('Add');
  await see('checkbox', '2 Tides');
  expect(await kept(db)).toMatchObject({ topicIds: [deep.id, tides.id] });
  await press('1.1 Deep water', 'checkbox');
  await waitFor(async () => expect(await kept(db)).toMatchObject({ topicIds: [tides.id] }));
});

test('the mark of what is unclear is put and taken back', async () => {
  const db = await openClip();
  const box = (await see('checkbox', /^Unclear/)) as HTMLInputElement;
  box.click();
  await waitFor(async () => expect(await kept(db)).toMatchObject({ unclear: true }));
  await waitFor(() => expect(box.checked).toBe(true));
  box.click();
  await waitFor(async () => expect(await kept(db)).toMatchObject({ unclear: false }));
});

test('without a topic nothing can be written from it, and it says what to do', async () => {
  await openClip({ topicIds: [] });
  await read(/^Put the clip under a topic first/);
  expect(screen.queryByLabelText('Question')).toBeNull();
});

test('deleted, it leads back to the clips, and Undo brings it back', async () => {
  const db = await openClip();
  await press('Delete: In deep water ω² = gk.');
  await see('heading', 'Clips');
  expect(await kept(db)).toBeUndefined();
  await read('Deleted: In deep water ω² = gk.');
  await press('Undo');
  await waitFor(() => expect(screen.queryByText(/^Deleted:/)).toBeNull());
  await see('link', 'In deep water ω² = gk.');
  expect(await kept(db)).toMatchObject({ id: clip.id, html: clip.html });
});

test('a clip that is not there leads to what was set aside', async () => {
  await openDesk(`clip/${newId()}`, courseRows());
  await see('heading', 'This clip is not here');
  await follow('Set aside');
  await read('Nothing has been set aside.');
});
