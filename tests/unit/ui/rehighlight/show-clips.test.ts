// @vitest-environment jsdom
import { afterEach, beforeEach, expect, test, vi } from 'vitest';
import { describeRange } from '#lib/capture/find/describe-range.ts';
import * as gone from '#lib/ui/rehighlight/say-gone.tsx';
import { showClips } from '#lib/ui/rehighlight/show-clips.ts';
import { find, rangeOver, show } from '../../capture/select.ts';
import { answerWith, fakeExtension } from '../fake-extension.ts';

const TIDES = 'The tide follows the moon, which pulls hardest on the water that lies nearest to it.';
const CLIP = 'b5a1f2c4-1111-4222-8333-444455556666';

let leaving: AbortController;
const takeBack = vi.fn();
const sayGone = vi.spyOn(gone, 'sayGone').mockReturnValue(takeBack);
const scrolledTo: Element[] = [];

beforeEach(() => {
  vi.useFakeTimers();
  fakeExtension();
  leaving = new AbortController();
  for (const spy of [sayGone, takeBack]) spy.mockClear();
  scrolledTo.length = 0;
  Element.prototype.scrollIntoView = function () {
    scrolledTo.push(this);
  };
  // As far down as it takes for a scroll to be needed.
  Range.prototype.getBoundingClientRect = () => ({ top: 5000, bottom: 5020 }) as DOMRect;
});
afterEach(() => {
  leaving.abort();
  vi.useRealTimers();
});

/** Opens a page in which one passage was kept, as it was then, and shows it as it is now. */
async function open(now: string, openedId: string | null = CLIP): Promise<void> {
  show(`<p id="tides">${TIDES}</p>`);
  const selectors = describeRange(rangeOver('#tides'), document.body);
  show(now);
  answerWith(() => ({ ok: true, value: { clips: [{ clipId: CLIP, selectors }], openedId } }));
  void showClips(document, leaving.signal);
  await vi.advanceTimersByTimeAsync(100);
}

test('the passage that was opened is brought into view once', async () => {
  await open(`<h1>Sea</h1><p id="now">${TIDES}</p>`);
  expect(scrolledTo).toEqual([find('#now')]);
  document.body.append('more');
  await vi.advanceTimersByTimeAsync(20_000);
  expect(scrolledTo).toHaveLength(1);
  expect(sayGone).not.toHaveBeenCalled();
});

test('it is brought into view when the page brings it late, and not said to be gone', async () => {
  await open('<p>Loading</p>');
  await vi.advanceTimersByTimeAsync(1500);
  show(`<p id="now">${TIDES}</p>`);
  await vi.advanceTimersByTimeAsync(1000);
  expect(scrolledTo).toEqual([find('#now')]);
  await vi.advanceTimersByTimeAsync(20_000);
  expect(sayGone).not.toHaveBeenCalled();
});

test('when the page rests without it, the student is told once', async () => {
  await open('<p>Something else altogether.</p>');
  expect(sayGone).not.toHaveBeenCalled();
  await vi.advanceTimersByTimeAsync(2500);
  expect(sayGone.mock.calls.map(([, id]) => id)).toEqual([CLIP]);
  document.body.append('more');
  await vi.advanceTimersByTimeAsync(20_000);
  expect(sayGone).toHaveBeenCalledTimes(1);
});

test('in a page without rest, the student is told all the same', async () => {
  await open('<p>Something else altogether.</p><p id="clock"></p>');
  for (let second = 0; second < 12; second++) {
    find('#clock').textContent = `12:00:${second}`;
    await vi.advanceTimersByTimeAsync(1000);
    if (second === 7) expect(sayGone).not.toHaveBeenCalled();
  }
  expect(sayGone).toHaveBeenCalledTimes(1);
});

test('a passage that comes after that takes the word back', async () => {
  await open('<p>Loading</p>');
  await vi.advanceTimersByTimeAsync(3000);
  expect(sayGone).toHaveBeenCalledTimes(1);
  show(`<p id="now">${TIDES}</p>`);
  await vi.advanceTimersByTimeAsync(1000);
  expect(takeBack).toHaveBeenCalledTimes(1);
  expect(scrolledTo).toEqual([find('#now')]);
});

test('who comes by themselves is neither led nor told', async () => {
  await open('<p>Something else altogether.</p>', null);
  await vi.advanceTimersByTimeAsync(20_000);
  show(`<p>${TIDES}</p>`);
  await vi.advanceTimersByTimeAsync(20_000);
  expect(sayGone).not.toHaveBeenCalled();
  expect(scrolledTo).toEqual([]);
});

test('who has left the page is told nothing', async () => {
  await open('<p>Something else altogether.</p>');
  leaving.abort();
  await vi.advanceTimersByTimeAsync(20_000);
  expect(sayGone).not.toHaveBeenCalled();
});
