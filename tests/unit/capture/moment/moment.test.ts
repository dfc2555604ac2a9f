import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { type CaptionTrack, captionsAt, cueText } from '#lib/capture/moment/cues.ts';
import { readTime, writeTime } from '#lib/capture/moment/time.ts';

describe('times', () => {
  test.each([
    [0, '0:00'],
    [9.9, '0:09'],
    [65, '1:05'],
    [3599.5, '59:59'],
    [3723, '1:02:03'],
  ])('%s seconds read %s', (seconds, text) => expect(writeTime(seconds)).toBe(text));

  test.each([
    ['1:05', 65],
    [' 0:09 ', 9],
    ['65', 65],
    ['1:02:03', 3723],
    ['0:09.5', 9.5],
    ['0:09,5', 9.5],
  ])('“%s” is %s seconds', (text, seconds) => expect(readTime(text)).toBe(seconds));

  test.each(['', 'soon', '1:75', '-1', '1:2:3:4', '1:', '0x10', '1e3', '999999'])('“%s” is no time', (text) =>
    expect(readTime(text)).toBeNull(),
  );

  test('what is written is read again', () => {
    fc.assert(fc.property(fc.integer({ min: 0, max: 86_399 }), (time) => readTime(writeTime(time)) === time));
  });
});

describe('captions', () => {
  test.each([
    ['tags go', '<v Lecturer>as <i>e</i> to <c.red>kz</c>', 'as e to kz'],
    ['signs are read', 'a &lt; b &amp; c&nbsp;&gt; d', 'a < b & c > d'],
    ['lines are joined', 'the radius\nfalls off', 'the radius falls off'],
    ['a time within goes', 'one <00:00:03.000>two', 'one two'],
    ['what is no sign stays', 'R&D; &unknown;', 'R&D; &unknown;'],
  ])('%s', (_what, text, read) => expect(cueText(text)).toBe(read));

  const track = (over: Partial<CaptionTrack> = {}): CaptionTrack => ({
    kind: 'captions',
    mode: 'showing',
    cues: [
      { startTime: 0, endTime: 4, text: 'one' },
      { startTime: 4, endTime: 8, text: 'two' },
      { startTime: 6, endTime: 9, text: '<b>three</b>' },
      { startTime: 9, endTime: 12, text: '' },
    ],
    ...over,
  });

  test.each([
    ['those at a moment', { start: 5 }, 'two'],
    ['two at once', { start: 7 }, 'two\nthree'],
    ['the one that begins there', { start: 4 }, 'two'],
    ['all of a stretch', { start: 3, end: 6 }, 'one\ntwo\nthree'],
    ['none where there is none', { start: 10 }, ''],
  ])('%s', (_what, moment, text) => expect(captionsAt([track()], moment)).toBe(text));

  test('hidden tracks count, those switched off and other kinds do not', () => {
    expect(captionsAt([track({ mode: 'hidden' })], { start: 1 })).toBe('one');
    expect(captionsAt([track({ mode: 'disabled' })], { start: 1 })).toBe('');
    expect(captionsAt([track({ kind: 'chapters' })], { start: 1 })).toBe('');
    expect(captionsAt([track({ cues: null }), track({ kind: 'subtitles' })], { start: 1 })).toBe('one');
  });
});
