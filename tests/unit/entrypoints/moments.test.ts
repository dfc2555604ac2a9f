import { expect, test } from 'vitest';
import type { Selector } from '#lib/model/selector.ts';
import { momentsAmong, sameAs } from '../../../entrypoints/background/moments.ts';
import { aClip } from '../builders.ts';

const at = (value: string): Selector[] => [
  { type: 'FragmentSelector', conformsTo: 'http://www.w3.org/TR/media-frags/', value },
];

test('the same words are the same clip, however they are spaced', () => {
  const clip = aClip({ text: 'Long waves  outrun\nshort ones.' });
  expect(sameAs({ text: 'Long waves outrun short ones.' })(clip)).toBe(true);
  expect(sameAs({ text: 'Short waves.' })(clip)).toBe(false);
});

test('of a video, the same words at another time are another clip', () => {
  const clip = aClip({ text: 'The title', selectors: at('t=9.5') });
  expect(sameAs({ text: 'The title', selectors: at('t=9.5') })(clip)).toBe(true);
  expect(sameAs({ text: 'The title', selectors: at('t=9.5,12') })(clip)).toBe(false);
  expect(sameAs({ text: 'The title' })(clip)).toBe(false);
  expect(sameAs({ text: 'The title', selectors: at('t=9.5') })(aClip({ text: 'The title' }))).toBe(false);
});

test('a moment is known by its time, whatever its captions', () => {
  const clip = aClip({ text: 'Long waves', selectors: at('t=9.5') });
  expect(sameAs({ text: 'Waves, filmed', selectors: at('t=9.5') })(clip)).toBe(true);
});

test('a picture without words is like no other', () => {
  expect(sameAs({ text: '', selectors: [] })(aClip({ text: '', selectors: [] }))).toBe(false);
});

test('what was framed is never the same', () => {
  const clip = aClip({ text: 'Depth of water' });
  expect(sameAs({ text: 'Depth of water', framed: true })(clip)).toBe(false);
});

test('moments come in the order of time, in the student’s own words where there are any', () => {
  const late = aClip({ text: 'Late', selectors: at('t=100,120') });
  const early = aClip({ text: 'Early', ownWords: 'My words', selectors: at('t=9.5') });
  const pdf = aClip({
    selectors: [
      { type: 'FragmentSelector', conformsTo: 'http://tools.ietf.org/rfc/rfc3778', value: 'page=3' },
    ],
  });
  expect(momentsAmong([late, aClip(), pdf, early])).toEqual([
    { clipId: early.id, fragment: 't=9.5', text: 'My words' },
    { clipId: late.id, fragment: 't=100,120', text: 'Late' },
  ]);
});
