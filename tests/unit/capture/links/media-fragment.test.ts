import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  MEDIA_FRAGMENTS,
  momentFragment,
  momentUrl,
  parseMoment,
} from '#lib/capture/links/media-fragment.ts';
import { FRAGMENT_OF } from '#lib/model/selector.ts';
import { MEDIA_FRAGMENT_CASES } from '#tests/data/media-fragments.ts';

it('names what its fragments conform to as the model does', () => {
  expect(MEDIA_FRAGMENTS).toBe(FRAGMENT_OF.media);
});

describe('parseMoment', () => {
  it.each(MEDIA_FRAGMENT_CASES)('%s: %s', (_, fragment, moment) => {
    expect(parseMoment(fragment)).toEqual(moment);
    expect(parseMoment(`#${fragment}`)).toEqual(moment);
  });

  // Source: Media Fragments URI 1.0, 4.2.1: hours, minutes, seconds and a fraction of them.
  it('reads hours and fractions', () => {
    expect(parseMoment('t=1:02:03.5')).toEqual({ start: 3723.5 });
    expect(parseMoment('t=120:00:00,120:00:01')).toEqual({ start: 432_000, end: 432_001 });
    expect(parseMoment('t=02:03')).toEqual({ start: 123 });
  });

  it('reads what stands in its way as nothing', () => {
    for (const fragment of ['', '#', 't', '%', 't=%', 'xywh=0,0,1,1'])
      expect(parseMoment(fragment)).toBeNull();
  });
});

describe('momentFragment', () => {
  it.each([
    [{ start: 30, end: 60 }, 't=30,60'],
    [{ start: 0 }, 't=0'],
    [{ start: 12.44 }, 't=12.4'],
    [{ start: 12.4, end: 20 }, 't=12.4,20'],
    [{ start: 12.41, end: 12.44 }, 't=12.4'],
    [{ start: 1e-7 }, 't=0'],
  ])('writes %j as %s, to a tenth of a second', (moment, text) => {
    expect(momentFragment(moment)).toBe(text);
  });

  it('writes what is read again', () => {
    fc.assert(
      fc.property(fc.nat(900_000), fc.option(fc.integer({ min: 1, max: 900_000 })), (from, length) => {
        const start = from / 10;
        const moment = length === null ? { start } : { start, end: (from + length) / 10 };
        expect(parseMoment(momentFragment(moment))).toEqual(moment);
      }),
    );
  });
});

describe('momentUrl', () => {
  it.each([
    ['https://sea.example/tides.webm', 'https://sea.example/tides.webm#t=30,60'],
    ['https://sea.example/tides.webm#t=5', 'https://sea.example/tides.webm#t=30,60'],
    ['https://sea.example/tides.webm#t=5&track=en', 'https://sea.example/tides.webm#track=en&t=30,60'],
    ['https://sea.example/lectures?id=3#/part/2', 'https://sea.example/lectures?id=3#/part/2&t=30,60'],
    ['https://sea.example/#', 'https://sea.example/#t=30,60'],
  ])('%s', (url, expected) => {
    expect(momentUrl(url, { start: 30, end: 60 })).toBe(expected);
  });
});
