// @vitest-environment jsdom
import { render, screen, within } from '@testing-library/preact';
import { useState } from 'preact/hooks';
import { afterEach, beforeEach, expect, test, vi } from 'vitest';
import type { SlipState, SlipTopic } from '#lib/model/message.ts';
import { Slip } from '#lib/ui/slip/slip.tsx';
import { Topics } from '#lib/ui/slip/topics.tsx';
import { fakeExtension } from '../fake-extension.ts';
import { clearScreen, key, press, see, type } from '../student.ts';
import { DEEP, PRESSURE, slipState, TIDES } from './slip-state.ts';

beforeEach(() => fakeExtension());
afterEach(clearScreen);

const SEARCH = 'Look for another topic';

function Chosen({ state, first }: { state: SlipState; first: string[] }) {
  const [chosen, choose] = useState(first);
  return (
    <>
      <Topics state={state} chosen={chosen} choose={choose} />
      <output>{chosen.join(' ')}</output>
    </>
  );
}
const showTopics = (first: string[] = [], over: Partial<SlipState> = {}) =>
  render(<Chosen state={slipState(over)} first={first} />);
const chosen = () => document.querySelector('output')!.textContent;

/** What stands in the list, with a star before what is ticked. */
const listed = () =>
  screen
    .getAllByRole<HTMLInputElement>('checkbox')
    .map((box) => `${box.checked ? '*' : ' '}${box.closest('label')!.textContent!.trim()}`);

const found = () => screen.queryAllByRole('listitem').map((item) => item.textContent);

test('suggested topics stand with the words that decided', () => {
  showTopics();
  expect(listed()).toEqual([
    ' 1.1 Deep water – 71% likely, because of deep water, wavelength',
    ' 1.2 Shallow water – 20% likely, because of waves',
  ]);
});

test('ticks are put and taken back, in the order in which they were put', async () => {
  showTopics();
  await press(/Shallow water/, 'checkbox');
  await press(/Deep water/, 'checkbox');
  expect(chosen()).toBe('shallow deep');
  await press(/Shallow water/, 'checkbox');
  expect(chosen()).toBe('deep');
});

test.each([
  ['a word of its title', 'tide', [`${TIDES.code} ${TIDES.title}`]],
  ['its code', '3.1', ['3.1 Hydrostatic pressure']],
  ['words in any order and case', 'PRESSURE hydro', ['3.1 Hydrostatic pressure']],
])('another topic is found by %s', async (_by, typed, names) => {
  showTopics();
  await type(SEARCH, typed);
  expect(found()).toEqual(names);
});

test('a topic that is found is put in the list, ticked, and stays there when its tick goes', async () => {
  showTopics([DEEP.id]);
  const search = await type(SEARCH, 'hydrostatic');
  await press('3.1 Hydrostatic pressure');
  expect(chosen()).toBe(`${DEEP.id} ${PRESSURE.id}`);
  expect(search.value).toBe('');
  expect(found()).toEqual([]);
  await press(/Hydrostatic pressure/, 'checkbox');
  expect(chosen()).toBe(DEEP.id);
  expect(listed()).toContain(' 3.1 Hydrostatic pressure');
});

test('what stands in the list already is not found again; nothing found is said', async () => {
  showTopics();
  await type(SEARCH, 'deep');
  expect(found()).toEqual([]);
  await screen.findByText('No topic found');
});

test('six at most are shown, and how many there are is said', async () => {
  const topics: SlipTopic[] = Array.from({ length: 9 }, (_, i) => ({
    id: `tide-${i}`,
    code: `4.${i}`,
    title: 'A further tide',
    depth: 1,
  }));
  showTopics([], { topics, suggestions: [] });
  await type(SEARCH, 'tide');
  expect(found()).toHaveLength(6);
  await screen.findByText('9 topics found');
});

test('a topic that is gone is not listed, and no topic at all is no error', () => {
  showTopics(['gone'], { topics: [], suggestions: [] });
  expect(screen.queryAllByRole('checkbox')).toEqual([]);
  expect(within(screen.getByRole('group', { name: 'Topic' })).getByRole('searchbox')).toBeTruthy();
});

function showSlip(over: Partial<SlipState>) {
  const keep = vi.fn(() => new Promise<never>(() => undefined));
  render(
    <Slip
      state={slipState(over)}
      passage={document.createDocumentFragment()}
      keep={keep}
      openDesk={() => undefined}
      leave={() => undefined}
    />,
  );
  return { keep };
}
const ticked = () => listed().filter((line) => line.startsWith('*'));

test('Enter takes the first topic that was found, and keeps nothing yet', async () => {
  const { keep } = showSlip({});
  await type(SEARCH, 'pressure');
  key('Enter');
  await see('checkbox', /Hydrostatic pressure/);
  expect(ticked()).toContain('*3.1 Hydrostatic pressure');
  expect(keep).not.toHaveBeenCalled();
});

test('Enter on a tick keeps', async () => {
  const { keep } = showSlip({});
  (await see('checkbox', /Shallow water/)).focus();
  key('Enter');
  expect(keep).toHaveBeenCalledTimes(1);
});

test('the likeliest topic is ticked beforehand, alone', async () => {
  showSlip({});
  await see('checkbox', /Deep water/);
  expect(ticked()).toEqual(['*1.1 Deep water – 71% likely, because of deep water, wavelength']);
});

test('the topic that was aimed at goes before the likeliest, and says so', async () => {
  showSlip({ aimedTopicId: TIDES.id, offSyllabus: true });
  await see('checkbox', /Tides/);
  expect(ticked()).toEqual(['*2 Tides – the gap you aimed at']);
  expect(listed()[0]).toBe(ticked()[0]);
});

test('where the passage looks off the syllabus, that is said and nothing is ticked', async () => {
  showSlip({ offSyllabus: true });
  await screen.findByText(/^This does not look like anything in the syllabus of Foundation Oceanography\./);
  expect(ticked()).toEqual([]);
});
