import fc from 'fast-check';
import { expect, test } from 'vitest';
import { frameBetween, LEAST_SIDE, moved, printScale, sized } from '#lib/capture/pdf/frame.ts';
import { around, fragmentOf, holds, placeOf } from '#lib/capture/pdf/place.ts';

const PAGE = { width: 595, height: 842 };

// RFC 8118, section 3: page=<page number>; viewrect=<left>,<top>,<wd>,<ht>, from the visible page's top left corner.
test('a place is written as RFC 8118 has it', () => {
  expect(fragmentOf({ page: 3, rect: null })).toBe('page=3');
  const rect = { left: 72, top: 100.46, width: 200.04, height: 40 };
  expect(fragmentOf({ page: 3, rect })).toBe('page=3&viewrect=72,100.5,200,40');
});

test.each([
  ['page=5', { page: 5, rect: null }],
  ['#page=5', { page: 5, rect: null }],
  ['source=x&page=2&viewrect=1,2.5,3,4', { page: 2, rect: { left: 1, top: 2.5, width: 3, height: 4 } }],
  ['page=2#viewrect=1,2,3,4', { page: 2, rect: { left: 1, top: 2, width: 3, height: 4 } }],
  ['page=2&viewrect=1,2,0,4', { page: 2, rect: null }],
  ['page=2&viewrect=1,2,3', { page: 2, rect: null }],
  ['page=2&viewrect=1,2,3,1e9', { page: 2, rect: null }],
  ['page=0', null],
  ['page=two', null],
  ['viewrect=1,2,3,4', null],
  ['', null],
])('the place that “%s” names', (fragment, place) => {
  expect(placeOf(fragment)).toEqual(place);
});

test('a place that was written is read back, to a tenth of a point', () => {
  const tenths = (most: number) => fc.integer({ min: 0, max: most * 10 }).map((n) => n / 10);
  const rects = fc.record({
    left: tenths(500),
    top: tenths(500),
    width: tenths(500).filter((n) => n > 0),
    height: tenths(500).filter((n) => n > 0),
  });
  fc.assert(
    fc.property(fc.integer({ min: 1, max: 999_999 }), fc.option(rects), (page, rect) => {
      expect(placeOf(fragmentOf({ page, rect }))).toEqual({ page, rect });
    }),
  );
});

test('what lies around rectangles, and what one holds', () => {
  expect(around([])).toBeNull();
  const [a, b] = [
    { left: 10, top: 20, width: 30, height: 10 },
    { left: 5, top: 25, width: 10, height: 40 },
  ];
  expect(around([a, b])).toEqual({ left: 5, top: 20, width: 35, height: 45 });
  expect(holds(a, { left: 12, top: 22, width: 4, height: 4 })).toBe(true);
  expect(holds(a, { left: 38, top: 22, width: 8, height: 4 })).toBe(false);
});

test('a frame has its corners where they were set, whichever came first', () => {
  const frame = { left: 100, top: 200, width: 50, height: 60 };
  expect(frameBetween({ x: 100, y: 200 }, { x: 150, y: 260 }, PAGE)).toEqual(frame);
  expect(frameBetween({ x: 150, y: 200 }, { x: 100, y: 260 }, PAGE)).toEqual(frame);
});

test('however a frame is drawn, moved and sized, it stays on its page and large enough', () => {
  const corner = fc.record({
    x: fc.integer({ min: -900, max: 900 }),
    y: fc.integer({ min: -900, max: 900 }),
  });
  const steps = fc.array(
    fc.tuple(fc.boolean(), fc.integer({ min: -700, max: 700 }), fc.integer({ min: -700, max: 700 })),
  );
  fc.assert(
    fc.property(corner, corner, steps, (a, b, way) => {
      let frame = frameBetween(a, b, PAGE);
      for (const [sizes, right, down] of way) frame = (sizes ? sized : moved)(frame, right, down, PAGE);
      expect(Math.min(frame.left, frame.top)).toBeGreaterThanOrEqual(0);
      expect(frame.left + frame.width).toBeLessThanOrEqual(PAGE.width + 1e-9);
      expect(frame.top + frame.height).toBeLessThanOrEqual(PAGE.height + 1e-9);
      expect(Math.min(frame.width, frame.height)).toBeGreaterThanOrEqual(LEAST_SIDE);
    }),
  );
});

test('arrow keys move a frame without changing its size, up to the edge', () => {
  const frame = { left: 10, top: 10, width: 100, height: 50 };
  expect(moved(frame, -40, 12, PAGE)).toEqual({ left: 0, top: 22, width: 100, height: 50 });
  expect(sized(frame, 24, -12, PAGE)).toEqual({ left: 10, top: 10, width: 124, height: 38 });
});

test('a small frame is pictured at 300 dots an inch, a large one with its longer side at 1600 pixels', () => {
  expect(printScale({ width: 72, height: 36 }) * 72).toBeCloseTo(300);
  expect(printScale({ width: 595, height: 842 }) * 842).toBeCloseTo(1600);
});
