// @vitest-environment jsdom
import { fireEvent } from '@testing-library/preact';
import { afterEach, beforeEach, describe, expect, test, vi } from 'vitest';
import { drawFrame } from '#lib/ui/frame/draw-frame.ts';
import type { Layer } from '#lib/ui/frame/layer.ts';
import { layOut } from '../../capture/pictures/boxes.ts';
import { show } from '../../capture/select.ts';
import { fakeExtension } from '../fake-extension.ts';

// The real layer drops every event that a script made, and here all are.
const raised = vi.hoisted(() => ({ root: null as HTMLElement | null, closing: new AbortController() }));
vi.mock('#lib/ui/frame/layer.ts', () => ({
  raiseLayer(doc: Document): Layer {
    const root = (raised.root = doc.body.appendChild(doc.createElement('div')));
    const closing = (raised.closing = new AbortController());
    root.setPointerCapture = () => undefined;
    const leave = () => {
      closing.abort();
      root.remove();
    };
    return { root, signal: closing.signal, leave };
  },
}));

beforeEach(() => {
  fakeExtension();
  Object.defineProperty(document, 'elementsFromPoint', {
    configurable: true,
    value: () => [...document.querySelectorAll('b, img')],
  });
  show('<b></b><img data-box="100 120 200 100">');
  layOut(document);
});
afterEach(() => document.body.replaceChildren());

const frame = () => raised.root!.querySelector<HTMLElement>('.frame')!;
const press = (key: string, over: object = {}) =>
  fireEvent.keyDown(document.activeElement!, { key, ...over });
const pointer = (type: string, clientX: number, clientY: number, at: Element = raised.root!) =>
  at.dispatchEvent(new MouseEvent(type, { bubbles: true, clientX, clientY }));

test('it begins on the picture in view, with the keyboard', () => {
  void drawFrame(document);
  expect(frame().style.cssText).toBe('left: 100px; top: 120px; width: 200px; height: 100px;');
  expect(document.activeElement).toBe(frame());
});

test('arrow keys move and size it, and it is said; Enter keeps it', async () => {
  const drawn = drawFrame(document);
  press('ArrowRight');
  press('ArrowDown', { shiftKey: true });
  expect(raised.root!.querySelector('[role=status]')!.textContent).toBe(
    '104 from the left, 120 from the top, 200 wide, 104 high',
  );
  press('Enter');
  expect(await drawn).toEqual({ left: 104, top: 120, width: 200, height: 104 });
  expect(raised.root!.isConnected).toBe(false);
});

test('Escape leaves', async () => {
  const drawn = drawFrame(document);
  press('Escape');
  expect(await drawn).toBeNull();
});

test('Tab goes round the frame and its buttons, and Enter on a button is the button’s', async () => {
  const drawn = drawFrame(document);
  const stops = [1, 2, 3].map(() => (press('Tab'), document.activeElement!.textContent.trim()));
  expect(stops).toEqual(['Keep what is framed Enter', 'Leave Esc', '']);
  press('Tab', { shiftKey: true });
  expect(document.activeElement!.textContent).toContain('Leave');
  expect(press('Enter')).toBe(true);
  (document.activeElement as HTMLElement).click();
  expect(await drawn).toBeNull();
});

describe('by pointer', () => {
  test('a drag keeps what it went over', async () => {
    const drawn = drawFrame(document);
    pointer('pointerdown', 300, 200);
    pointer('pointermove', 250, 150);
    expect(frame().style.width).toBe('50px');
    pointer('pointermove', 200, 100);
    pointer('pointerup', 200, 100);
    expect(await drawn).toEqual({ left: 200, top: 100, width: 100, height: 100 });
  });

  test('a press takes the picture there, whole', async () => {
    const drawn = drawFrame(document);
    pointer('pointerdown', 150, 150);
    pointer('pointerup', 151, 150);
    expect(await drawn).toEqual({ left: 100, top: 120, width: 200, height: 100 });
  });

  test('a press beside every picture, and a frame too small for one, change nothing', () => {
    const done = vi.fn();
    drawFrame(document).then(done, done);
    document.querySelector('img')!.remove();
    pointer('pointerdown', 5, 5);
    pointer('pointerup', 5, 5);
    pointer('pointerdown', 5, 5);
    pointer('pointermove', 15, 15);
    pointer('pointerup', 15, 15);
    expect(raised.root!.isConnected).toBe(true);
    expect(done).not.toHaveBeenCalled();
  });

  test('a press on a button begins no frame', () => {
    void drawFrame(document);
    const before = frame().style.cssText;
    pointer('pointerdown', 10, 10, raised.root!.querySelector('button')!);
    pointer('pointermove', 300, 300);
    expect(frame().style.cssText).toBe(before);
  });
});

test('a layer that is taken away leaves', async () => {
  const drawn = drawFrame(document);
  raised.closing.abort();
  expect(await drawn).toBeNull();
});
