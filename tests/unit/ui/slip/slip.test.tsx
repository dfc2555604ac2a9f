// @vitest-environment jsdom
import { render, screen } from '@testing-library/preact';
import { afterEach, beforeEach, expect, test, vi } from 'vitest';
import { StudentError } from '#lib/model/student-error.ts';
import type { SlipState } from '#lib/model/message.ts';
import { type Decision, Slip } from '#lib/ui/slip/slip.tsx';
import { fakeExtension } from '../fake-extension.ts';
import { clearScreen, key, press, read, see, type } from '../student.ts';
import { DEEP, SHALLOW, slipState } from './slip-state.ts';

beforeEach(() => fakeExtension());
afterEach(clearScreen);

const passage = () =>
  document
    .createRange()
    .createContextualFragment('<p>In deep water <b>long</b> waves outrun short ones.</p>');

/** Shows a slip; gives what was kept from it, and a way to answer. */
function showSlip(over: Partial<SlipState> = {}) {
  const answers: { keep(): void; refuse(error: unknown): void }[] = [];
  const keep = vi.fn(
    (_decision: Decision) =>
      new Promise<{ clipId: string }>((resolve, reject) =>
        answers.push({ keep: () => resolve({ clipId: 'the-clip' }), refuse: reject }),
      ),
  );
  const [openDesk, leave] = [vi.fn(), vi.fn()];
  const props = { state: slipState(over), passage: passage(), keep, openDesk, leave };
  render(<Slip {...props} />);
  const decisions = () => keep.mock.calls.map(([decision]) => decision);
  return { keep, decisions, openDesk, leave, answer: () => answers.at(-1)! };
}

const words = () => screen.getByRole('textbox', { name: 'In your own words' }) as HTMLTextAreaElement;

test('it shows the course, the passage as it will be kept, and waits for the own words', async () => {
  showSlip();
  await see('heading', 'Keep for Foundation Oceanography');
  const shown = screen.getByRole('region', { name: 'The passage' });
  expect(shown.textContent).toBe('In deep water long waves outrun short ones.');
  expect(shown.querySelector('b')?.textContent).toBe('long');
  expect(document.activeElement).toBe(words());
});

test('Enter keeps what was decided, once, however often it is pressed', async () => {
  const { decisions } = showSlip();
  await type('In your own words', 'Speed grows with wavelength.');
  key('Enter');
  key('Enter');
  expect(decisions()).toEqual([
    { topicIds: [DEEP.id], ownWords: 'Speed grows with wavelength.', unclear: false },
  ]);
  expect(screen.getByRole<HTMLButtonElement>('button', { name: /^Keep/ }).disabled).toBe(true);
});

test.each([
  ['Shift+Enter', { shiftKey: true }],
  ['Enter that ends a composed character', { isComposing: true }],
])('%s does not keep', async (_name, init) => {
  const { keep } = showSlip();
  await type('In your own words', 'Speed grows');
  key('Enter', init);
  expect(keep).not.toHaveBeenCalled();
});

test('the button keeps as well, and what is unclear is marked', async () => {
  const { decisions } = showSlip();
  await press(/^Unclear/, 'checkbox');
  await press(/^Keep/);
  expect(decisions()).toEqual([{ topicIds: [DEEP.id], ownWords: '', unclear: true }]);
});

test('once kept, Enter leads to the first question', async () => {
  const { answer, openDesk } = showSlip();
  key('Enter');
  answer().keep();
  await see('heading', 'Kept');
  key('Enter');
  expect(openDesk.mock.calls).toEqual([['clip/the-clip']]);
});

test('or the student carries on reading', async () => {
  const { answer, openDesk, leave } = showSlip();
  key('Enter');
  answer().keep();
  await press(/^Carry on/);
  expect(openDesk).not.toHaveBeenCalled();
  expect(leave).toHaveBeenCalledTimes(1);
});

test('an error is shown, keeps what was typed and ticked, and keeping again works', async () => {
  const { answer, keep, decisions } = showSlip();
  await press(/Shallow water/, 'checkbox');
  await type('In your own words', 'Speed grows with wavelength.');
  key('Enter');
  answer().refuse(new StudentError('errorStorageFull'));
  expect((await see('alert')).textContent).toMatch(/^The disk is full/);
  expect(words().value).toBe('Speed grows with wavelength.');
  key('Enter');
  expect(screen.queryByRole('alert')).toBeNull();
  expect(keep).toHaveBeenCalledTimes(2);
  expect(decisions()[1]).toEqual(decisions()[0]);
  answer().keep();
  await see('heading', 'Kept');
});

test('a passage that was kept before opens with what was decided then, and is saved as a change', async () => {
  const kept = { clipId: 'the-clip', topicIds: [SHALLOW.id], ownWords: 'Depth decides.', unclear: true };
  const { decisions } = showSlip({ kept, offSyllabus: true });
  await see('heading', 'You kept this passage before');
  await read('Change its topics or your words here; it is not kept twice.');
  expect(words().value).toBe('Depth decides.');
  expect(screen.getByRole<HTMLInputElement>('checkbox', { name: /^Unclear/ }).checked).toBe(true);
  expect(screen.getByRole<HTMLInputElement>('checkbox', { name: /Shallow/ }).checked).toBe(true);
  expect(screen.queryByText(/does not look like anything/)).toBeNull();
  expect(screen.queryByRole('button', { name: /^Keep/ })).toBeNull();
  await press(/^Save changes/);
  expect(decisions()).toEqual([{ topicIds: [SHALLOW.id], ownWords: 'Depth decides.', unclear: true }]);
});

test('Leave leaves and keeps nothing', async () => {
  const { keep, leave } = showSlip();
  await press(/^Leave/);
  expect(leave).toHaveBeenCalledTimes(1);
  expect(keep).not.toHaveBeenCalled();
});
