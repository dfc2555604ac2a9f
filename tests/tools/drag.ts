import type { ChromiumDriver } from './chromium-driver.ts';
import type { BrowserDriver } from './driver.ts';
import type { Firefox } from './firefox.ts';

export interface Point {
  x: number;
  y: number;
}

/** Drags the real mouse from one point of the window to another. */
export async function drag(driver: BrowserDriver, from: Point, to: Point): Promise<void> {
  if (driver.name === 'Chromium') {
    const { mouse } = (driver as ChromiumDriver).page;
    await mouse.move(from.x, from.y);
    await mouse.down();
    await mouse.move((from.x + to.x) / 2, (from.y + to.y) / 2, { steps: 4 });
    await mouse.move(to.x, to.y, { steps: 4 });
    await mouse.up();
    return;
  }
  const { firefox } = driver as BrowserDriver & { firefox: Firefox };
  const move = ({ x, y }: Point) => ({
    type: 'pointerMove',
    x: Math.round(x),
    y: Math.round(y),
    origin: 'viewport',
    duration: 50,
  });
  const actions = [
    move(from),
    { type: 'pointerDown', button: 0 },
    move({ x: (from.x + to.x) / 2, y: (from.y + to.y) / 2 }),
    move(to),
    { type: 'pointerUp', button: 0 },
  ];
  await firefox.performActions([
    { type: 'pointer', id: 'mouse', parameters: { pointerType: 'mouse' }, actions },
  ]);
}
