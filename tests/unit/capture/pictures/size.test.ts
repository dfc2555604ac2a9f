// @vitest-environment jsdom
import { describe, expect, test } from 'vitest';
import * as small from '#lib/capture/pictures/limits.ts';
import { keptSize, partOfView } from '#lib/capture/pictures/size.ts';
import * as model from '#lib/model/picture.ts';

test('the limits repeat those of the model', () => {
  expect(small.LONGEST_SIDE).toBe(model.LONGEST_SIDE);
  expect(small.HEAVIEST_PICTURE).toBe(model.HEAVIEST_PICTURE);
  expect(model.Picture.shape.alt.safeParse('x'.repeat(small.LONGEST_ALT)).success).toBe(true);
  expect(model.Picture.shape.alt.safeParse('x'.repeat(small.LONGEST_ALT + 1)).success).toBe(false);
});

describe('how large a picture is kept', () => {
  const size = (width: number, height: number) => ({ width, height });
  test.each([
    ['as it is, where it is shown so', size(300, 200), size(300, 200), 1, size(300, 200)],
    ['no larger than it is, where it is shown larger', size(300, 200), size(900, 600), 2, size(300, 200)],
    ['as it is shown, where it is larger', size(1000, 500), size(250, 125), 1, size(250, 125)],
    ['at the screen’s resolution', size(1000, 500), size(250, 125), 2, size(500, 250)],
    ['within the longest side', size(8000, 2000), size(4000, 1000), 2, size(1600, 400)],
    ['tall ones too', size(100, 6400), size(100, 6400), 1, size(25, 1600)],
    ['where only a part is shown, by the larger share', size(1000, 1000), size(500, 100), 1, size(500, 500)],
    ['a drawing without measures as it is shown', size(0, 0), size(120, 40), 2, size(240, 80)],
    ['a drawing that is not shown', size(0, 0), size(0, 0), 1, size(1, 1)],
    ['a picture that is not shown keeps its size', size(40, 30), size(0, 0), 1, size(40, 30)],
  ])('%s', (_what, natural, shown, ratio, kept) => {
    expect(keptSize(natural, shown, ratio)).toEqual(kept);
  });
});

describe('the part of the view that a box is', () => {
  const view = (over: object = {}) => ({ innerWidth: 1000, innerHeight: 500, ...over }) as unknown as Window;
  const box = { left: 100, top: 50, width: 200, height: 100 };

  test('in shares of the window', () => {
    expect(partOfView(box, view())).toEqual({ left: 0.1, top: 0.1, width: 0.2, height: 0.2 });
  });

  test('zoomed by two fingers, only a part of the window is in view', () => {
    const visualViewport = { offsetLeft: 50, offsetTop: 25, scale: 2 };
    expect(partOfView(box, view({ visualViewport }))).toEqual({
      left: 0.1,
      top: 0.1,
      width: 0.4,
      height: 0.4,
    });
  });
});
