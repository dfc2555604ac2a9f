// @vitest-environment jsdom
import { afterEach, expect, test } from 'vitest';
import { boxInTop } from '#lib/capture/frames.ts';
import { findVideo } from '#lib/capture/moment/find-video.ts';
import { find, show } from '../select.ts';
import { layOut, placeAt } from '../pictures/boxes.ts';

afterEach(() => document.body.replaceChildren());

function ready(root: ParentNode, { playing = '' } = {}): void {
  layOut(root);
  for (const video of root.querySelectorAll('video')) {
    Object.defineProperty(video, 'readyState', { value: video.hasAttribute('data-empty') ? 0 : 4 });
    Object.defineProperty(video, 'paused', { value: video.id !== playing });
  }
}

test('of several the largest in view', () => {
  show('<video id="a" data-box="0 0 100 100"></video><video id="b" data-box="0 0 300 200"></video>');
  ready(document);
  expect(findVideo(document)?.id).toBe('b');
});

test('what is out of view counts less than what is in it', () => {
  show('<video id="a" data-box="0 0 100 100"></video><video id="b" data-box="0 -5000 900 900"></video>');
  ready(document);
  expect(findVideo(document)?.id).toBe('a');
});

test('one that plays before any other', () => {
  show('<video id="a" data-box="0 0 100 100"></video><video id="b" data-box="0 0 300 200"></video>');
  ready(document, { playing: 'a' });
  expect(findVideo(document)?.id).toBe('a');
});

test('none, or none with anything in it', () => {
  expect(findVideo(document)).toBeNull();
  show('<video data-empty data-box="0 0 100 100"></video>');
  ready(document);
  expect(findVideo(document)).toBeNull();
});

test('in an open shadow tree and in a frame of the same site', () => {
  show('<div></div>');
  const shadow = find('div').attachShadow({ mode: 'open' });
  shadow.append(document.createElement('video'));
  placeAt(shadow.querySelector('video')!, { left: 0, top: 0, width: 50, height: 50 });
  ready(shadow);
  expect(findVideo(document)).toBe(shadow.querySelector('video'));

  show('<iframe></iframe>');
  const inner = (find('iframe') as HTMLIFrameElement).contentDocument!;
  inner.body.append(inner.createElement('video'));
  const video = inner.querySelector('video')!;
  placeAt(video, { left: 10, top: 20, width: 50, height: 50 });
  placeAt(find('iframe'), { left: 100, top: 200, width: 300, height: 300 });
  ready(inner);
  expect(findVideo(document)).toBe(video);
  expect(boxInTop(video)).toEqual({ left: 110, top: 220, right: 160, bottom: 270 });
});
