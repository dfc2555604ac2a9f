// @vitest-environment jsdom
import { afterEach, expect, test } from 'vitest';
import type { Selector } from '#lib/model/selector.ts';
import { returnToMoment } from '#lib/ui/moment/return-to-moment.ts';
import { placeAt } from '../../capture/pictures/boxes.ts';

const at = (value: string): Selector[] => [
  { type: 'FragmentSelector', conformsTo: 'http://www.w3.org/TR/media-frags/', value },
];
const { signal } = new AbortController();

function showFilm(readyState: number): HTMLVideoElement {
  const film = document.body.appendChild(document.createElement('video'));
  placeAt(film, { left: 0, top: 0, width: 100, height: 100 });
  Object.defineProperty(film, 'readyState', { configurable: true, value: readyState });
  return film;
}
afterEach(() => document.body.replaceChildren());

test('a video that is there is gone to at once', () => {
  const film = showFilm(4);
  expect(returnToMoment(document, at('t=9.5'), signal)).toBe(true);
  expect(film.currentTime).toBe(9.5);
});

test('one that comes later is gone to when it can be', () => {
  const film = showFilm(0);
  expect(returnToMoment(document, at('t=9.5'), signal)).toBe(true);
  expect(film.currentTime).toBe(0);
  film.dispatchEvent(new Event('loadedmetadata'));
  expect(film.currentTime).toBe(9.5);
});

test('what is no moment of a video is left to others', () => {
  const film = showFilm(4);
  const quote: Selector[] = [{ type: 'TextQuoteSelector', exact: 'Long waves' }];
  expect(returnToMoment(document, quote, signal)).toBe(false);
  expect(returnToMoment(document, at('page=3'), signal)).toBe(false);
  expect(film.currentTime).toBe(0);
});
