// @vitest-environment jsdom
// @vitest-environment-options {"url": "http://127.0.0.1/waves"}
import { fireEvent, render, screen, waitFor } from '@testing-library/preact';
import { afterEach, beforeEach, expect, test, vi } from 'vitest';
import * as limits from '#lib/capture/limits.ts';
import { readPage } from '#lib/capture/page.ts';
import type { SlipState } from '#lib/model/message.ts';
import { StudentError } from '#lib/model/student-error.ts';
import { showParts } from '#lib/ui/slip/parts/show-parts.tsx';
import type { Widened } from '#lib/ui/slip/parts/widener.ts';
import { type Decision, Slip } from '#lib/ui/slip/slip.tsx';
import { rangeOver, show } from '../../../capture/select.ts';
import { answerWith, fakeExtension } from '../../fake-extension.ts';
import { clearScreen, key, press, see, type } from '../../student.ts';
import { DEEP, SHALLOW, TIDES, slipState } from '../slip-state.ts';

class SheetStub {
  replaceSync = () => undefined;
}

beforeEach(() => {
  fakeExtension();
  vi.stubGlobal('CSSStyleSheet', SheetStub);
  Object.assign(document, { adoptedStyleSheets: [] });
  show(
    '<article><h1>Waves</h1><h2>Deep</h2><p id="one">Long waves win.</p><p>Short ones lose.</p><ul><li>So.</li></ul>' +
      '<h2>Shallow</h2><p>All tie.</p></article>',
  );
});
afterEach(() => {
  clearScreen();
  vi.unstubAllGlobals();
});

const tides = slipState({ suggestions: [{ topicId: TIDES.id, chance: 0.5, terms: ['moon'] }] });

/** Shows a slip on the first paragraph; the background says `state` of every other passage. */
function showSlip(state: SlipState = tides, first = slipState()) {
  const asked = answerWith(() => ({ ok: true, value: state })) as { name: string; data: { text: string } }[];
  const selected = { doc: document, range: rangeOver('#one'), page: readPage(document) };
  const kept = vi.fn(async (decision: Decision, widened: Widened | null, before: SlipState['kept']) => {
    calls.push({ decision, before, content: (await widened?.content()) ?? null });
    return { clipId: 'the-clip' };
  });
  const calls: {
    decision: Decision;
    before: SlipState['kept'];
    content: Awaited<ReturnType<Widened['content']>> | null;
  }[] = [];
  render(
    <Slip
      state={first}
      passage={document.createRange().createContextualFragment('<p>Long waves win.</p>')}
      widen={async (...how) => showParts(selected, ...how)}
      keep={kept}
      openDesk={vi.fn()}
      leave={vi.fn()}
    />,
  );
  return { asked, calls };
}

const box = (name: string) => screen.getByRole<HTMLInputElement>('checkbox', { name });
const keepButton = () => screen.getByRole<HTMLButtonElement>('button', { name: /^(Keep Enter|Save)/ });
const lastText = (asked: { data: { text: string } }[]) => asked.at(-1)?.data.text;

test('the section is laid out in parts with the focus on the first, and kept whole', async () => {
  const { asked, calls } = showSlip();
  await press('Keep this section');
  await see('group', 'Parts that will be kept');
  expect(document.activeElement).toBe(box('Deep'));
  expect(screen.queryByRole('region', { name: 'The passage' })).toBeNull();
  await waitFor(() => expect(lastText(asked)).toBe('Deep\nLong waves win.\nShort ones lose.\n- So.'));
  key('Enter');
  await see('heading', 'Kept');
  expect(calls[0]!.content).toMatchObject({
    passage: {
      text: 'Deep\nLong waves win.\nShort ones lose.\n- So.',
      html: '<h2>Deep</h2><p>Long waves win.</p><p>Short ones lose.</p><ul><li>So.</li></ul>',
    },
    headings: ['Waves'],
    pictures: [],
  });
});

test('a part is dropped and taken back by keyboard, and only what is left is kept', async () => {
  const { asked, calls } = showSlip();
  await press('Keep this section');
  await see('group', 'Parts that will be kept');
  key('ArrowDown');
  expect(document.activeElement).toBe(box('Long waves win.'));
  key('ArrowDown');
  fireEvent.click(document.activeElement!);
  await waitFor(() => expect(lastText(asked)).toBe('Deep\nLong waves win.\n- So.'));
  expect(box('Short ones lose.').checked).toBe(false);
  key('ArrowUp');
  fireEvent.click(document.activeElement!);
  fireEvent.click(document.activeElement!);
  await waitFor(() => expect(lastText(asked)).toBe('Deep\nLong waves win.\n- So.'));
  await press('Keep Enter');
  await see('heading', 'Kept');
  expect(calls[0]!.content!.passage.html).toBe('<h2>Deep</h2><p>Long waves win.</p><ul><li>So.</li></ul>');
  expect(calls[0]!.content!.selectors[0]).toMatchObject({ exact: 'DeepLong waves win.' });
});

test('one stop for Tab: the part that was last at', async () => {
  showSlip();
  await press('Keep this section');
  await see('group', 'Parts that will be kept');
  key('ArrowDown');
  await waitFor(() => expect([box('Deep').tabIndex, box('Long waves win.').tabIndex]).toEqual([-1, 0]));
  key('ArrowUp');
  key('ArrowUp');
  expect(document.activeElement).toBe(box('Deep'));
});

test('the main explanation holds the other sections as well', async () => {
  const prose = 'Gravity acts on all of them alike, and depth decides how fast they go. '.repeat(9);
  show(
    `<article><h2>Deep</h2><p id="one">Long waves win. ${prose}</p><h2>Shallow</h2><p>All tie. ${prose}</p></article>`,
  );
  const { asked } = showSlip();
  await press('Keep the main explanation');
  await waitFor(() => expect(lastText(asked)).toContain('All tie.'));
  expect(screen.queryByRole('button', { name: 'Keep the main explanation' })).toBeNull();
  await press('Keep this section');
  await waitFor(() => expect(lastText(asked)).not.toContain('All tie.'));
});

test('back to the selection: it is shown and kept as before, and the words stay', async () => {
  const { calls } = showSlip();
  await type('In your own words', 'Mine.');
  await press('Keep this section');
  await press('Back to my selection');
  await see('region', 'The passage');
  expect(screen.queryByRole('group', { name: 'Parts that will be kept' })).toBeNull();
  expect(document.activeElement).toBe(screen.getByRole('textbox', { name: 'In your own words' }));
  await press('Keep Enter');
  await see('heading', 'Kept');
  expect(calls).toEqual([
    { decision: { topicIds: [DEEP.id], ownWords: 'Mine.', unclear: false }, before: null, content: null },
  ]);
});

test('topics are suggested anew for the wider passage; those that were chosen stay', async () => {
  showSlip();
  await press('Keep this section');
  await waitFor(() =>
    expect(screen.getByRole<HTMLInputElement>('checkbox', { name: /Tides/ }).checked).toBe(true),
  );
  await press('Back to my selection');
  await press(/Shallow water/, 'checkbox');
  await press('Keep this section');
  await see('checkbox', /Tides/);
  expect(screen.getByRole<HTMLInputElement>('checkbox', { name: /Tides/ }).checked).toBe(false);
  for (const name of [/Deep water/, /Shallow water/])
    expect(screen.getByRole<HTMLInputElement>('checkbox', { name }).checked).toBe(true);
});

test('a section that was kept before is changed, with the words of then and now', async () => {
  const kept = { clipId: 'old-clip', topicIds: [SHALLOW.id], ownWords: 'Then.', unclear: false };
  const { calls } = showSlip({ ...tides, kept });
  await type('In your own words', 'Now.');
  await press('Keep this section');
  await see('heading', 'You kept this passage before');
  await press(/^Save changes/);
  await see('heading', 'Kept');
  expect(calls[0]).toMatchObject({ before: kept, decision: { ownWords: 'Then.\nNow.' } });
});

test('widening a passage that was kept makes another clip', async () => {
  const kept = { clipId: 'old-clip', topicIds: [SHALLOW.id], ownWords: 'Then.', unclear: false };
  const { calls } = showSlip(tides, slipState({ kept }));
  await press('Keep this section');
  await see('heading', 'Keep for Foundation Oceanography');
  await press('Keep Enter');
  await see('heading', 'Kept');
  expect(calls[0]).toMatchObject({ before: null, content: { headings: ['Waves'] } });
});

test('too much is told with its length, asks for nothing, and can be kept once parts are dropped', async () => {
  const long = 'x'.repeat(limits.LONGEST_PASSAGE);
  show(`<article><h2>Deep</h2><p id="one">Long waves win.</p><p>${long}</p></article>`);
  const { asked, calls } = showSlip();
  await press('Keep this section');
  expect((await see('alert')).textContent).toBe(
    'That is 100021 characters, and a clip holds 100000. Untick parts until it fits.',
  );
  expect(keepButton().disabled).toBe(true);
  key('Enter');
  expect([asked, calls]).toEqual([[], []]);
  fireEvent.click(box('x'.repeat(80)));
  await waitFor(() => expect(keepButton().disabled).toBe(false));
  expect(screen.queryByRole('alert')).toBeNull();
  key('Enter');
  await see('heading', 'Kept');
  expect(calls[0]!.content!.passage.text).toBe('Deep\nLong waves win.');
});

test('with every part dropped nothing can be kept', async () => {
  showSlip();
  await press('Keep this section');
  for (const part of await screen.findAllByRole('checkbox', { name: /Deep$|Long|Short|So/ }))
    fireEvent.click(part);
  expect((await see('alert')).textContent).toBe('Nothing is left. Tick what you want to keep.');
  expect(keepButton().disabled).toBe(true);
});

test('where there is far too much, it says so and the selection stays', async () => {
  show(`<article><h2>Deep</h2><p id="one">Long waves win.</p><p>${'x'.repeat(300_001)}</p></article>`);
  showSlip();
  await press('Keep this section');
  expect((await see('alert')).textContent).toMatch(
    /^That would be 300020 characters, and a clip holds 100000/,
  );
  await see('region', 'The passage');
  expect(keepButton().disabled).toBe(false);
});

test('when the script cannot be brought in, it says so and the selection stays', async () => {
  const widen = () => Promise.reject(new StudentError('errorReloadPage'));
  const props = { keep: vi.fn(), openDesk: vi.fn(), leave: vi.fn() };
  render(<Slip state={slipState()} passage={document.createDocumentFragment()} widen={widen} {...props} />);
  await press('Keep the main explanation');
  expect((await see('alert')).textContent).toMatch(/^Plumbline was updated while this page was open/);
  await see('region', 'The passage');
});

test('what cannot be widened has no buttons for it', () => {
  const props = { keep: vi.fn(), openDesk: vi.fn(), leave: vi.fn() };
  render(<Slip state={slipState()} passage={document.createDocumentFragment()} widen={null} {...props} />);
  expect(screen.queryByRole('button', { name: /section|explanation/ })).toBeNull();
});
