// @vitest-environment jsdom
// @vitest-environment-options {"url": "http://127.0.0.1/waves"}
import { fireEvent, within } from '@testing-library/preact';
import { afterEach, beforeEach, expect, test, vi } from 'vitest';
import type { SlipHost } from '#lib/ui/slip/host.ts';
import { openSlip } from '#lib/ui/slip/open-slip.tsx';
import { rangeOver, select, show } from '../../capture/select.ts';
import { answerWith, fakeExtension } from '../fake-extension.ts';
import { slipState } from './slip-state.ts';

// The real slip drops every event that a script made, and here all are; its guard has a test of its own.
const raised = vi.hoisted(() => ({ sheet: null as HTMLElement | null, left: 0, placed: 0 }));
vi.mock('#lib/ui/slip/host.ts', () => ({
  raiseHost(doc: Document): SlipHost {
    const sheet = (raised.sheet = doc.body.appendChild(doc.createElement('div')));
    Object.assign(raised, { left: 0, placed: 0 });
    return {
      sheet,
      beside: () => undefined,
      place: () => void raised.placed++,
      leave: () => void raised.left++,
    };
  },
}));

beforeEach(() => {
  fakeExtension();
  show('<h1>How waves travel</h1><h2>Deep water</h2><p>Long waves outrun <b>short</b> ones.</p>');
  select(rangeOver('p'));
});
afterEach(() => {
  document.body.replaceChildren();
});

const slip = () => within(raised.sheet!);

/** The background: it answers `readSlip` with this state, and everything else with a clip. */
const background = (state: unknown) =>
  answerWith(({ name }) => ({ ok: true, value: name === 'readSlip' ? state : { clipId: 'the-clip' } })) as {
    name: string;
    data: Record<string, unknown>;
  }[];

test('the background is asked about the passage, its headings and its page', async () => {
  const came = background(slipState());
  await openSlip(document, 'selection');
  expect(came).toMatchObject([
    {
      name: 'readSlip',
      data: {
        text: 'Long waves outrun short ones.',
        headings: ['Deep water', 'How waves travel'],
        page: {
          kind: 'page',
          url: 'http://127.0.0.1/waves',
          title: 'How waves travel',
          site: '127.0.0.1',
          author: '',
        },
      },
    },
  ]);
  expect(raised.placed).toBeGreaterThan(0);
});

test('what is kept is the passage with the decision', async () => {
  const came = background(slipState());
  await openSlip(document, 'selection');
  const words = slip().getByRole('textbox', { name: 'In your own words' });
  fireEvent.input(words, { target: { value: 'Speed grows with wavelength.' } });
  fireEvent.keyDown(words, { key: 'Enter' });
  await slip().findByRole('heading', { name: 'Kept' });
  expect(came[1]).toMatchObject({
    name: 'keepClip',
    data: {
      courseId: 'course',
      passage: { text: 'Long waves outrun short ones.', html: 'Long waves outrun <b>short</b> ones.' },
      headings: ['Deep water', 'How waves travel'],
      topicIds: ['deep'],
      ownWords: 'Speed grows with wavelength.',
      unclear: false,
    },
  });
  expect(came[1]!.data.selectors).toContainEqual(
    expect.objectContaining({ type: 'TextQuoteSelector', exact: 'Long waves outrun short ones.' }),
  );
});

test('what was kept before is changed, not kept again', async () => {
  const kept = { clipId: 'the-clip', topicIds: ['deep'], ownWords: 'They outrun them.', unclear: false };
  const came = background(slipState({ kept }));
  await openSlip(document, 'selection');
  fireEvent.click(slip().getByRole('button', { name: /^Save changes/ }));
  await slip().findByRole('heading', { name: 'Kept' });
  expect(came[1]).toEqual({ name: 'changeClip', data: kept });
});

test('without a course the slip leads to the desk', async () => {
  const came = background(null);
  await openSlip(document, 'selection');
  expect(slip().getByRole('alert').textContent).toMatch(/^There is no course yet/);
  fireEvent.click(slip().getByRole('button', { name: 'Start a course' }));
  await vi.waitFor(() => expect(raised.left).toBe(1));
  expect(came.at(-1)).toEqual({ name: 'openDesk', data: { path: 'course' } });
});

test('where the desk does not open, the slip stays and says so', async () => {
  answerWith(({ name }) =>
    name === 'readSlip' ? { ok: true, value: null } : { ok: false, error: 'errorCourseGone', values: [] },
  );
  await openSlip(document, 'selection');
  fireEvent.click(slip().getByRole('button', { name: 'Start a course' }));
  await vi.waitFor(() =>
    expect(slip().getByRole('alert').textContent).not.toMatch(/^There is no course yet/),
  );
  expect(raised.left).toBe(0);
});

test('a selection in a frame of another site: its address can be opened', async () => {
  background(slipState());
  document.getSelection()!.removeAllRanges();
  const frame = document.body.appendChild(document.createElement('iframe'));
  frame.src = 'http://localhost/elsewhere';
  frame.tabIndex = 0;
  vi.spyOn(frame, 'contentDocument', 'get').mockReturnValue(null);
  vi.spyOn(document, 'activeElement', 'get').mockReturnValue(frame);
  const open = vi.spyOn(window, 'open').mockReturnValue(null);
  await openSlip(document, 'selection');
  expect(slip().getByRole('alert').textContent).toMatch(/comes from another site/);
  fireEvent.click(slip().getByRole('button', { name: 'Open that part' }));
  expect(open).toHaveBeenCalledWith('http://localhost/elsewhere', '_blank', 'noopener');
  expect(raised.left).toBe(1);
  vi.restoreAllMocks();
});

test('with nothing selected it says so and asks nobody', async () => {
  const came = background(slipState());
  document.getSelection()!.removeAllRanges();
  await openSlip(document, 'selection');
  expect(slip().getByRole('alert').textContent).toMatch(/^Nothing is selected/);
  expect(came).toEqual([]);
});

test('a viewer of PDF files is told as such', async () => {
  vi.spyOn(document, 'contentType', 'get').mockReturnValue('application/pdf');
  await openSlip(document, 'selection');
  expect(slip().getByRole('alert').textContent).toMatch(/^This is a PDF/);
  vi.restoreAllMocks();
});

test('when the extension behind the page is gone, it asks to reload the page', async () => {
  await openSlip(document, 'selection');
  expect(slip().getByRole('alert').textContent).toMatch(/^Plumbline was updated while this page was open/);
  fireEvent.click(slip().getByRole('button', { name: /^Leave/ }));
  expect(raised.left).toBe(1);
});
