import fc from 'fast-check';
import { expect, test } from 'vitest';
import { type Box, type Size, placeSlip } from '#lib/ui/slip/place.ts';

const EDGE = 8;
const GAP = 12;

const windows = fc.record({
  width: fc.integer({ min: 320, max: 3000 }),
  height: fc.integer({ min: 240, max: 2000 }),
});

/** A window, a slip that it can hold, and a selection anywhere, also scrolled out of it in part or whole. */
const scenes = windows.chain((window) =>
  fc.record({
    window: fc.constant(window),
    slip: fc.record({
      width: fc.integer({ min: 40, max: window.width - 2 * EDGE }),
      height: fc.integer({ min: 20, max: window.height - 2 * EDGE }),
    }),
    selection: fc
      .record({
        left: fc.integer({ min: -200, max: window.width + 200 }),
        top: fc.integer({ min: -3000, max: window.height + 3000 }),
        width: fc.integer({ min: 0, max: window.width }),
        height: fc.integer({ min: 0, max: 4000 }),
      })
      .map(({ left, top, width, height }) => ({ left, top, right: left + width, bottom: top + height })),
  }),
);

const boxOf = ({ left, top }: { left: number; top: number }, { width, height }: Size): Box => ({
  left,
  top,
  right: left + width,
  bottom: top + height,
});

const overlaps = (a: Box, b: Box): boolean =>
  a.left < b.right && b.left < a.right && a.top < b.bottom && b.top < a.bottom;

test('a slip that the window can hold stands wholly inside it', () => {
  fc.assert(
    fc.property(scenes, ({ window, slip, selection }) => {
      const { left, top, right, bottom } = boxOf(placeSlip(selection, slip, window), slip);
      expect(Math.min(left, top)).toBeGreaterThanOrEqual(EDGE);
      expect(right).toBeLessThanOrEqual(window.width - EDGE);
      expect(bottom).toBeLessThanOrEqual(window.height - EDGE);
    }),
    { numRuns: 1000 },
  );
});

test('where there is room on any side, the slip does not cover the selection', () => {
  const hasRoom = ({ window, slip, selection }: { window: Size; slip: Size; selection: Box }) =>
    selection.right + GAP + slip.width + EDGE <= window.width ||
    selection.left - GAP - slip.width >= EDGE ||
    selection.bottom + GAP + slip.height + EDGE <= window.height ||
    selection.top - GAP - slip.height >= EDGE;
  fc.assert(
    fc.property(scenes, (scene) => {
      fc.pre(hasRoom(scene));
      const at = boxOf(placeSlip(scene.selection, scene.slip, scene.window), scene.slip);
      expect(overlaps(at, scene.selection)).toBe(false);
    }),
    { numRuns: 1000 },
  );
});

const WINDOW = { width: 1000, height: 800 };
const SLIP = { width: 300, height: 200 };

test.each([
  ['right of it', { left: 100, top: 50, right: 500, bottom: 90 }, { left: 512, top: 50 }],
  ['left of it', { left: 500, top: 50, right: 900, bottom: 90 }, { left: 188, top: 50 }],
  ['below it', { left: 100, top: 50, right: 900, bottom: 90 }, { left: 100, top: 102 }],
  ['above it', { left: 100, top: 500, right: 900, bottom: 700 }, { left: 100, top: 288 }],
  ['at the right edge', { left: 0, top: 0, right: 1000, bottom: 800 }, { left: 692, top: 8 }],
])('the slip goes %s, as there is room', (_where, selection, place) => {
  expect(placeSlip(selection, SLIP, WINDOW)).toEqual(place);
});

test('a slip that is larger than the window shows its beginning', () => {
  const at = placeSlip(
    { left: 10, top: 10, right: 20, bottom: 20 },
    { width: 500, height: 900 },
    { width: 320, height: 400 },
  );
  expect(at).toEqual({ left: EDGE, top: EDGE });
});
