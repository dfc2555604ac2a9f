// @vitest-environment jsdom
import { afterEach, beforeEach, expect, test, vi } from 'vitest';
import { isWhollySeen } from '#lib/capture/pictures/in-view.ts';
import { readPictures } from '#lib/capture/pictures/read-pictures.ts';
import type { ViewPart } from '#lib/capture/pictures/size.ts';
import { svgAddress } from '#lib/capture/pictures/svg-address.ts';
import { find, show } from '../select.ts';
import { layOut } from './boxes.ts';

const IMAGE = 'data-box="100 100 200 100"';
const pen = {
  drawImage: vi.fn(),
  fillRect: vi.fn(),
  getImageData: () => ({ data: new Uint8ClampedArray([0, 0, 0, 255]) }),
};

beforeEach(() => {
  Object.defineProperty(document, 'elementFromPoint', {
    configurable: true,
    value: () => find('img, canvas'),
  });
  vi.spyOn(HTMLCanvasElement.prototype, 'getContext').mockReturnValue(pen as never);
  vi.spyOn(HTMLCanvasElement.prototype, 'toDataURL').mockReturnValue('data:image/png;base64,AAAA');
  for (const name of ['naturalWidth', 'naturalHeight'])
    Object.defineProperty(HTMLImageElement.prototype, name, { configurable: true, get: () => 50 });
});
afterEach(() => {
  vi.restoreAllMocks();
  document.body.replaceChildren();
});

const read = (html: string, cut = vi.fn(async () => [null]) as never) => {
  show(html);
  layOut(document);
  return readPictures([find('img, canvas')], window, cut);
};

test('a picture is drawn again from what the page has, and nobody is asked to cut it out', async () => {
  const cut = vi.fn();
  expect(await read(`<img ${IMAGE} alt="a wave">`, cut as never)).toEqual([
    { dataUrl: 'data:image/png;base64,AAAA', width: 50, height: 50, alt: 'a wave' },
  ]);
  expect(cut).not.toHaveBeenCalled();
});

test('one that may not be read is cut out of what is seen', async () => {
  vi.mocked(HTMLCanvasElement.prototype.toDataURL).mockImplementation(() => {
    throw new DOMException('tainted', 'SecurityError');
  });
  const cut = vi.fn(async () => [{ dataUrl: 'data:image/png;base64,BBBB', width: 200, height: 100 }]);
  expect(await read(`<img ${IMAGE} alt="a wave">`, cut as never)).toEqual([
    { dataUrl: 'data:image/png;base64,BBBB', width: 200, height: 100, alt: 'a wave' },
  ]);
  const [[parts]] = cut.mock.calls as unknown as [[ViewPart[]]];
  expect(parts).toHaveLength(1);
  expect(parts[0]!.left * innerWidth).toBeCloseTo(100);
  expect(parts[0]!.height * innerHeight).toBeCloseTo(100);
});

test('one that may not be read and is not wholly seen is not had', async () => {
  vi.mocked(HTMLCanvasElement.prototype.toDataURL).mockImplementation(() => {
    throw new DOMException('tainted', 'SecurityError');
  });
  const cut = vi.fn();
  expect(await read(`<img data-box="-1 100 200 100">`, cut as never)).toEqual([null]);
  expect(cut).not.toHaveBeenCalled();
});

test('a canvas that is empty by now is cut out as well', async () => {
  const empty = vi.spyOn(pen, 'getImageData').mockReturnValue({ data: new Uint8ClampedArray(8) });
  const cut = vi.fn(async () => [{ dataUrl: 'data:image/png;base64,CCCC', width: 200, height: 100 }]);
  expect((await read(`<canvas ${IMAGE}></canvas>`, cut as never))[0]?.dataUrl).toContain('CCCC');
  empty.mockRestore();
});

test('a heavy one is kept as WebP where that is much lighter', async () => {
  vi.mocked(HTMLCanvasElement.prototype.toDataURL).mockImplementation((type) =>
    type === 'image/webp' ? 'data:image/webp;base64,AAAA' : `data:image/png;base64,${'A'.repeat(900_000)}`,
  );
  expect((await read(`<img ${IMAGE}>`))[0]?.dataUrl).toBe('data:image/webp;base64,AAAA');
});

test('what lies over a picture hides it', () => {
  show(`<img ${IMAGE}><b>over</b>`);
  layOut(document);
  expect(isWhollySeen(find('img'), window)).toBe(true);
  Object.defineProperty(document, 'elementFromPoint', {
    configurable: true,
    value: (_x: number, y: number) => find(y > 190 ? 'b' : 'img'),
  });
  expect(isWhollySeen(find('img'), window)).toBe(false);
});

test('a drawing becomes an image of its own with the look that the page gives it', () => {
  show(`<style>path { fill: rgb(1, 2, 3) }</style>
    <svg ${IMAGE}><defs><path id="p"/></defs><use href="#p"/></svg>`);
  layOut(document);
  const address = svgAddress(find('svg'), window)!;
  const markup = decodeURIComponent(address.replace('data:image/svg+xml,', ''));
  expect(markup).toContain('xmlns="http://www.w3.org/2000/svg"');
  expect(markup).toContain('width="200" height="100"');
  expect(markup).toContain('fill: rgb(1, 2, 3)');
});

test.each([
  ['holds other markup', '<svg><foreignObject><p>x</p></foreignObject></svg>'],
  ['holds an image', '<svg><image href="a.png"/></svg>'],
  ['uses a part of another drawing', '<svg><use href="#elsewhere"/></svg>'],
  ['uses a file', '<svg><use href="signs.svg#p"/></svg>'],
])('a drawing that %s would not look the same alone', (_what, html) => {
  show(html);
  expect(svgAddress(find('svg'), window)).toBeNull();
});
