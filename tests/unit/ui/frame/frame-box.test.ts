import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { SMALLEST, between, moved, shownPart, within } from '#lib/ui/frame/frame-box.ts';

const WINDOW = { width: 800, height: 600 };
const box = (left: number, top: number, width: number, height: number) => ({ left, top, width, height });
const key = (name: string, over: object = {}) => ({ key: name, shiftKey: false, repeat: false, ...over });

test('a drag in any direction gives the same frame', () => {
  const [a, b] = [
    { x: 10, y: 20 },
    { x: 110, y: 80 },
  ];
  expect(between(a, b)).toEqual(box(10, 20, 100, 60));
  expect(between(b, a)).toEqual(box(10, 20, 100, 60));
  expect(between({ x: 110, y: 20 }, { x: 10, y: 80 })).toEqual(box(10, 20, 100, 60));
});

describe('arrow keys', () => {
  test.each([
    ['ArrowRight', {}, box(104, 100, 200, 50)],
    ['ArrowUp', {}, box(100, 96, 200, 50)],
    ['ArrowLeft', { repeat: true }, box(84, 100, 200, 50)],
    ['ArrowRight', { shiftKey: true }, box(100, 100, 204, 50)],
    ['ArrowUp', { shiftKey: true }, box(100, 100, 200, 46)],
    ['ArrowDown', { shiftKey: true, repeat: true }, box(100, 100, 200, 66)],
  ])('%s %j', (name, over, after) => {
    expect(moved(box(100, 100, 200, 50), key(name, over), WINDOW)).toEqual(after);
  });

  test('other keys do nothing', () => expect(moved(box(0, 0, 9, 9), key('a'), WINDOW)).toBeNull());

  test('at the edge of the window a frame stops, with its size', () => {
    expect(moved(box(0, 550, 50, 50), key('ArrowLeft'), WINDOW)).toEqual(box(0, 550, 50, 50));
    expect(moved(box(0, 550, 50, 50), key('ArrowDown', { shiftKey: true }), WINDOW)).toEqual(
      box(0, 550, 50, 50),
    );
  });

  test('whatever is pressed, the frame stays in the window and is not too small', () => {
    const press = fc.record({
      key: fc.constantFrom('ArrowLeft', 'ArrowRight', 'ArrowUp', 'ArrowDown'),
      shiftKey: fc.boolean(),
      repeat: fc.boolean(),
    });
    fc.assert(
      fc.property(fc.array(press, { maxLength: 200 }), (presses) => {
        const at = presses.reduce((before, pressed) => moved(before, pressed, WINDOW)!, box(10, 10, 40, 40));
        expect(Math.min(at.left, at.top)).toBeGreaterThanOrEqual(0);
        expect(at.left + at.width).toBeLessThanOrEqual(WINDOW.width);
        expect(at.top + at.height).toBeLessThanOrEqual(WINDOW.height);
        expect(Math.min(at.width, at.height)).toBeGreaterThanOrEqual(SMALLEST);
      }),
    );
  });
});

test('of what reaches out of the window, the part inside', () => {
  expect(shownPart(box(-50, 500, 100, 300), WINDOW)).toEqual(box(0, 500, 50, 100));
  expect(shownPart(box(10, 10, 20, 20), WINDOW)).toEqual(box(10, 10, 20, 20));
});

test('in a window that became smaller the frame fits again', () => {
  expect(within(box(700, 500, 300, 90), { width: 400, height: 300 })).toEqual(box(100, 210, 300, 90));
});
