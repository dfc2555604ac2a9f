import { afterEach, beforeEach, describe, expect, test, vi } from 'vitest';
import { fakeBrowser } from 'wxt/testing/fake-browser';
import { pictureOf, takePictures } from '../../../entrypoints/background/pictures.ts';

const WHOLE = { left: 0, top: 0, width: 1, height: 1 };
const tab = { id: 3 } as never;
const drawn: number[][] = [];
const shoot = vi.fn();

beforeEach(() => {
  vi.useFakeTimers({ toFake: ['setTimeout'] });
  drawn.length = 0;
  shoot.mockReset().mockResolvedValue('data:image/png;base64,AAAA');
  vi.spyOn(fakeBrowser.tabs, 'get').mockResolvedValue({ id: 3, active: true, windowId: 7 } as never);
  Object.assign(fakeBrowser.tabs, { captureVisibleTab: shoot });
  vi.stubGlobal('createImageBitmap', async () => ({ width: 2000, height: 1000, close: () => undefined }));
  vi.stubGlobal(
    'OffscreenCanvas',
    class {
      width: number;
      height: number;
      constructor(width: number, height: number) {
        this.width = width;
        this.height = height;
      }
      getContext = () => ({ drawImage: (_shot: unknown, ...box: number[]) => drawn.push(box) });
      convertToBlob = async ({ type }: { type: string }) => new Blob(['bytes'], { type });
    },
  );
  vi.stubGlobal(
    'FileReader',
    class {
      result = '';
      onload = () => undefined;
      readAsDataURL({ type }: Blob) {
        this.result = `data:${type};base64,Yg==`;
        queueMicrotask(() => this.onload());
      }
    },
  );
});
afterEach(() => {
  vi.useRealTimers();
  vi.unstubAllGlobals();
  vi.restoreAllMocks();
});

test('a part is cut out at the resolution of the screen', async () => {
  const part = { left: 0.1, top: 0.2, width: 0.25, height: 0.5 };
  expect(await takePictures(tab, [part])).toEqual([
    { dataUrl: 'data:image/png;base64,Yg==', width: 500, height: 500 },
  ]);
  expect(drawn).toEqual([[200, 200, 500, 500, 0, 0, 500, 500]]);
  expect(shoot).toHaveBeenCalledWith(7, { format: 'png' });
});

test('of a part that reaches out of view, what is in it; of one that is outside, nothing; from one picture', async () => {
  const parts = [
    { left: -0.1, top: 0, width: 0.2, height: 0.1 },
    { left: 1.5, top: 0, width: 0.2, height: 0.1 },
  ];
  expect((await takePictures(tab, parts)).map((cut) => cut && [cut.width, cut.height])).toEqual([
    [200, 100],
    null,
  ]);
  expect(shoot).toHaveBeenCalledTimes(1);
});

test('it is scaled down to the longest side', async () => {
  expect((await takePictures(tab, [WHOLE]))[0]).toMatchObject({ width: 1600, height: 800 });
});

describe('what stands in the way is told', () => {
  test('the browser refuses', async () => {
    shoot.mockRejectedValue(new Error("Either the '<all_urls>' or 'activeTab' permission is required."));
    await expect(takePictures(tab, [WHOLE])).rejects.toThrow('errorPictureRefused');
    expect(shoot).toHaveBeenCalledTimes(1);
  });

  test('another tab is in front by now', async () => {
    vi.mocked(fakeBrowser.tabs.get).mockResolvedValue({ id: 3, active: false, windowId: 7 } as never);
    await expect(takePictures(tab, [WHOLE])).rejects.toThrow('errorPictureHidden');
    await expect(takePictures(undefined, [WHOLE])).rejects.toThrow('errorPictureHidden');
    expect(shoot).not.toHaveBeenCalled();
  });

  test('too many in a second: it tries again, three times at most', async () => {
    const busy = new Error('This request exceeds the MAX_CAPTURE_VISIBLE_TAB_CALLS_PER_SECOND quota.');
    shoot.mockRejectedValueOnce(busy);
    const taken = takePictures(tab, [WHOLE]);
    await vi.advanceTimersByTimeAsync(1000);
    expect(await taken).toHaveLength(1);
    shoot.mockRejectedValue(busy);
    const refused = expect(takePictures(tab, [WHOLE])).rejects.toThrow('errorPictureRefused');
    await vi.advanceTimersByTimeAsync(5000);
    await refused;
    expect(shoot).toHaveBeenCalledTimes(5);
  });
});

test('the bytes behind a data URL are stored with their kind', async () => {
  const { bytes, type, alt } = pictureOf({
    dataUrl: 'data:image/webp;base64,AAECAw==',
    width: 2,
    height: 2,
    alt: 'a wave',
  });
  expect([type, alt, bytes.type]).toEqual(['image/webp', 'a wave', 'image/webp']);
  expect([...new Uint8Array(await bytes.arrayBuffer())]).toEqual([0, 1, 2, 3]);
});
