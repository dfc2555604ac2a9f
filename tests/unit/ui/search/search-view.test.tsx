// @vitest-environment jsdom
import { screen, waitFor, within } from '@testing-library/preact';
import { beforeEach, expect, test, vi } from 'vitest';
import { fakeBrowser } from 'wxt/testing/fake-browser';
import * as deckSearch from '#lib/store/deck-search.ts';
import { changeQuestion } from '#lib/store/actions/items.ts';
import { Popup } from '#lib/ui/popup/popup.tsx';
import { aCourse, aLine, aQuestion, MORNING } from '../../builders.ts';
import { aSource, clipOf, course, courseRows, deep, shallow, tides } from '../a-course.ts';
import { deckWith, freshScreens, openDesk, renderInDeck } from '../render-in-deck.tsx';
import { choose, follow, key, press, read, see, type } from '../student.ts';

vi.mock('#lib/store/deck-search.ts', { spy: true });
freshScreens();
beforeEach(() => void vi.mocked(deckSearch.DeckSearch).mockClear());

const FIELD = 'Search what you kept and wrote';
const other = aSource({ title: 'Tides at school', url: 'http://127.0.0.1/tides' });
const bulges = clipOf({ text: 'Two tides: bulges of water.', topicIds: [tides.id], sourceId: other.id });
const speed = clipOf({ text: 'Speed in deep water.', ownWords: 'Long tides <b>win</b>.', unclear: true });
const line = aLine({
  courseId: course.id,
  topicId: shallow.id,
  clipId: speed.id,
  lead: 'Tides in shallow water',
  rest: String.raw`travel at \(c = \sqrt{g h}\)`,
});
const question = aQuestion({ courseId: course.id, topicId: tides.id, prompt: 'What is a neap tide?' });
const rows = () =>
  courseRows({ clips: [bulges, speed], lines: [line], questions: [question], sources: [aSource(), other] });
// The source of the other clips is the one of the course.
const withSource = () => {
  const all = rows();
  return { ...all, sources: [{ ...all.sources![0]!, id: speed.sourceId }, other] };
};

const links = () => screen.queryAllByRole('link').filter((link) => link.closest('.result'));
const shown = () => links().map(({ textContent }) => textContent);
const status = () => document.querySelector('main [role="status"]')!.textContent;
const finds = (text: string) => waitFor(() => expect(status()).toBe(text));

test('it finds what was kept and written, by kind, and marks what was found as text', async () => {
  await openDesk('search', withSource());
  await type(FIELD, 'tides');
  await finds('4 things found');
  for (const name of ['2 clips', '1 note line', '1 question']) await see('heading', name);
  const marks = [...document.querySelectorAll('mark')].map(({ textContent }) => textContent);
  expect(marks.sort()).toEqual(['Tides', 'tides', 'tide', 'tides'].sort());
  // What looks like markup is words.
  await read(/<b>win<\/b>/);
  await read('2 Tides · Tides at school');
  expect(links().map((link) => link.getAttribute('href'))).toEqual([
    `#/clip/${speed.id}`,
    `#/clip/${bulges.id}`,
    `#/topic/${shallow.id}/${line.id}`,
    `#/topic/${tides.id}/${question.id}`,
  ]);
});

test('nothing is loaded before the search is opened', async () => {
  await openDesk('clips', withSource());
  await see('heading', 'Clips');
  expect(deckSearch.DeckSearch).not.toHaveBeenCalled();
  await follow('Search');
  await waitFor(() => expect(deckSearch.DeckSearch).toHaveBeenCalledOnce());
  expect(document.activeElement).toBe(screen.getByLabelText(FIELD));
  await follow('Clips');
  await follow('Search');
  await see('heading', 'Search');
  expect(deckSearch.DeckSearch).toHaveBeenCalledOnce();
});

test('arrow keys lead down into the results and back; modified ones stay the browser’s', async () => {
  await openDesk('search', withSource());
  const field = await type(FIELD, 'tides');
  await finds('4 things found');
  key('ArrowDown', { altKey: true });
  expect(document.activeElement).toBe(field);
  key('ArrowDown');
  key('ArrowDown');
  expect(document.activeElement).toBe(links()[1]);
  for (let i = 0; i < 9; i++) key('ArrowDown');
  expect(document.activeElement).toBe(links()[3]);
  for (let i = 0; i < 4; i++) key('ArrowUp');
  expect(document.activeElement).toBe(field);
});

test('a result opens its topic at the item', async () => {
  Element.prototype.scrollIntoView ??= () => undefined;
  const seen = vi.spyOn(Element.prototype, 'scrollIntoView');
  await openDesk('search', withSource());
  await type(FIELD, 'neap');
  await finds('1 thing found');
  location.hash = links()[0]!.getAttribute('href')!;
  await see('heading', '2 Tides');
  await waitFor(() => expect(document.activeElement!.id).toBe(`item-${question.id}`));
  expect(seen).toHaveBeenCalledWith({ block: 'center' });
});

test('the address keeps what is asked, and the page begins with what it asks', async () => {
  await openDesk('search', withSource());
  await type(FIELD, 'tides');
  await press('Only what is unclear', 'checkbox');
  await waitFor(() => expect(location.hash).toBe('#/search?q=tides&unclear=1'));
  await finds('2 things found');
  location.hash = '#/clips';
  await see('heading', 'Clips');
  location.hash = '#/search?q=neap';
  await finds('1 thing found');
  expect(screen.getByLabelText<HTMLInputElement>(FIELD).value).toBe('neap');
  // While it is open as well.
  location.hash = '#/search?q=bulges';
  await waitFor(() => expect(shown()).toEqual(['Two tides: bulges of water.']));
});

test('it is narrowed down by topic with all below, source, unclear and day', async () => {
  await openDesk('search?q=tide&since=2026-03-01', withSource());
  await finds('4 things found');
  await choose('Topic', '1 Waves at sea');
  await finds('2 things found');
  await choose('Topic', 'Any topic');
  await choose('Source', 'Tides at school');
  await finds('1 thing found');
  await choose('Source', 'Any source');
  await press('Only what is unclear', 'checkbox');
  await finds('2 things found');
  await type('Kept until', '2026-03-01');
  await finds('Nothing found for “tide”.');
  await press('Search without these limits');
  await finds('4 things found');
});

test('an open search follows what is written elsewhere', async () => {
  const db = await openDesk('search?q=seiche', withSource());
  await finds('Nothing found for “seiche”.');
  expect(screen.queryByRole('button', { name: 'Search without these limits' })).toBeNull();
  await changeQuestion(db, question.id, { prompt: 'What is a seiche?' }, MORNING);
  await finds('1 thing found');
  expect(deckSearch.DeckSearch).toHaveBeenCalledOnce();
});

test('words of which nothing holds all are said to be so', async () => {
  await openDesk('search?q=neap+bulges', withSource());
  await finds('Nothing holds all these words. 2 things hold some of them.');
});

test('in all courses; a result of another course opens there', async () => {
  const second = aCourse({ name: 'Coasts' });
  const there = aLine({ courseId: second.id, topicId: deep.id, lead: 'Seiche in a bay' });
  const all = withSource();
  const db = await openDesk('search?q=seiche', {
    ...all,
    courses: [course, second],
    lines: [line, there],
  });
  await finds('Nothing found for “seiche”.');
  await press('Search in all courses');
  await finds('1 thing found');
  await read(/^Coasts · /);
  links()[0]!.click();
  await waitFor(() => expect(location.hash).toBe(`#/topic/${deep.id}/${there.id}`));
  expect(await db.getAll('settings')).toMatchObject([{ courseId: second.id }]);
});

test('more of a kind is shown when asked for', async () => {
  const clips = Array.from({ length: 23 }, (_, i) => clipOf({ text: `tide ${i}` }));
  await openDesk('search?q=tide', courseRows({ clips }));
  await finds('23 things found');
  expect(links()).toHaveLength(5);
  await press('Show more (18)');
  expect(links()).toHaveLength(23);
  expect(screen.queryByRole('button', { name: /^Show more/ })).toBeNull();
});

test('with nothing to search it says what to do', async () => {
  await openDesk('search?q=tide', courseRows());
  await read(/^There is nothing to search yet\./);
});

test('what is no word finds nothing and says nothing', async () => {
  await openDesk('search', withSource());
  await type(FIELD, '?!… “ ”');
  await waitFor(() => expect(location.hash).toContain('q='));
  expect(status()).toBe('');
  expect(shown()).toEqual([]);
});

test('in the popup it is loaded when it is opened, and each result leads to the desk', async () => {
  await deckWith(withSource());
  renderInDeck(<Popup />);
  const summary = await read('Search');
  expect(deckSearch.DeckSearch).not.toHaveBeenCalled();
  const details = summary.closest('details')!;
  details.open = true;
  details.dispatchEvent(new Event('toggle'));
  await type(FIELD, 'neap');
  await finds('1 thing found');
  const found = within(document.querySelector<HTMLElement>('.results')!).getByRole('link');
  expect(found.getAttribute('href')).toBe(
    fakeBrowser.runtime.getURL(`/desk.html#/topic/${tides.id}/${question.id}` as never),
  );
  await read('Question · 2 Tides');
  const atDesk = screen.getByRole('link', { name: 'Search at the desk' });
  expect(atDesk.getAttribute('href')).toMatch(/desk\.html#\/search\?q=neap$/);
});
