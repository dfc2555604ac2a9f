// @vitest-environment jsdom
import { beforeEach, expect, test, vi } from 'vitest';
import { goTo } from '#lib/ui/moment/go-to.ts';

let film: HTMLVideoElement;
let time = 0;
beforeEach(() => {
  time = 0;
  film = document.createElement('video');
  Object.defineProperty(film, 'currentTime', { get: () => time, set: (to: number) => (time = to) });
  film.play = vi.fn(async () => undefined);
  film.pause = vi.fn();
});

const at = (seconds: number, event = 'timeupdate') => {
  time = seconds;
  film.dispatchEvent(new Event(event));
};

test('a moment: the video goes there and stays as it was', () => {
  goTo(film, { start: 9.5 });
  expect(time).toBe(9.5);
  expect(film.play).not.toHaveBeenCalled();
});

test('a stretch is played to its end, once', () => {
  goTo(film, { start: 14, end: 20 });
  expect(film.play).toHaveBeenCalledTimes(1);
  at(14, 'seeked');
  at(19.9);
  expect(film.pause).not.toHaveBeenCalled();
  at(20.1);
  expect(film.pause).toHaveBeenCalledTimes(1);
  at(22);
  expect(film.pause).toHaveBeenCalledTimes(1);
});

test('who goes elsewhere meanwhile is not stopped', () => {
  goTo(film, { start: 14, end: 20 });
  at(14, 'seeked');
  at(30, 'seeking');
  at(30);
  expect(film.pause).not.toHaveBeenCalled();
});
