// @vitest-environment jsdom
import { afterEach, beforeEach, expect, test, vi } from 'vitest';
import { describeRange } from '#lib/capture/find/describe-range.ts';
import * as highlight from '#lib/capture/find/highlight.ts';
import { ClipsInPage } from '#lib/ui/rehighlight/clips-in-page.ts';
import { find, rangeOver, show } from '../../capture/select.ts';

const TIDES = 'The tide follows the moon, which pulls hardest on the water that lies nearest to it.';
const WAVES = 'Waves in deep water outrun one another: the longer the wave, the faster it travels.';
const PAGE = `<main><p id="tides">${TIDES}</p><p id="waves">${WAVES}</p></main>`;

let leaving: AbortController;
const painted: string[][] = [];

beforeEach(() => {
  leaving = new AbortController();
  painted.length = 0;
  vi.spyOn(highlight, 'paintRanges').mockImplementation((_view, _name, ranges) => {
    painted.push([...ranges].map(String));
    return true;
  });
});
afterEach(() => vi.restoreAllMocks());

/** The page as it was clipped, with both paragraphs kept. */
function clipsOfPage(): ClipsInPage {
  show(PAGE);
  const clips = ['tides', 'waves'].map((clipId) => ({
    clipId,
    selectors: describeRange(rangeOver(`#${clipId}`), document.body),
  }));
  return new ClipsInPage(document, clips, leaving.signal);
}

test('what a page renders anew is found in its new place, and nothing of the page is changed', async () => {
  const clips = clipsOfPage();
  await clips.look();
  const old = clips.rangeOf('tides')!;
  find('main').innerHTML = `<article><h1>Sea</h1><p>${WAVES}</p><p>${TIDES}</p></article>`;
  const markup = document.body.innerHTML;
  expect(old.toString()).toBe('');
  await clips.look();
  expect(clips.rangeOf('tides')!.startContainer.parentElement!.matches('p:last-child')).toBe(true);
  expect(painted).toEqual([
    [TIDES, WAVES],
    [TIDES, WAVES],
  ]);
  expect(document.body.innerHTML).toBe(markup);
});

test('what a page brings late is found when it is there', async () => {
  const clips = clipsOfPage();
  show('<main><p>Loading</p></main>');
  await clips.look();
  expect(clips.rangeOf('waves')).toBeNull();
  show(PAGE);
  await clips.look();
  expect(painted).toEqual([[], [TIDES, WAVES]]);
});

test('what is taken out is painted no more', async () => {
  const clips = clipsOfPage();
  await clips.look();
  find('#tides').remove();
  await clips.look();
  expect(clips.rangeOf('tides')).toBeNull();
  expect(painted.at(-1)).toEqual([WAVES]);
});

test('while all are there to the letter, a look costs nothing', async () => {
  const clips = clipsOfPage();
  await clips.look();
  document.body.append('12:01');
  expect(await clips.look()).toBe(0);
  expect(painted).toHaveLength(1);
});

test('one that was found by likeness only goes to the better place that comes', async () => {
  const clips = clipsOfPage();
  show(`<main><p>${TIDES.replace('hardest', 'most')}</p><p>${WAVES}</p></main>`);
  await clips.look();
  expect(painted.at(-1)![0]).toContain('pulls most');
  show(PAGE);
  await clips.look();
  expect(painted.at(-1)).toEqual([TIDES, WAVES]);
});

test('nothing is painted once the page was left', async () => {
  const clips = clipsOfPage();
  const look = clips.look();
  leaving.abort();
  await look;
  expect(painted).toEqual([]);
});

test('a clip without words or place is looked for nowhere', async () => {
  show(PAGE);
  const moment = {
    type: 'FragmentSelector' as const,
    conformsTo: 'http://www.w3.org/TR/media-frags/' as const,
    value: 't=3',
  };
  const clips = new ClipsInPage(document, [{ clipId: 'film', selectors: [moment] }], leaving.signal);
  expect(await clips.look()).toBe(0);
});
