import { type BrowserDriver, click, sees, until } from './driver.ts';
import { type SlipLook, lookAtSlip } from './slip-look.ts';

/** Opens the popup over the tab and presses one of its buttons once it has settled. */
export async function pressInPopup({ tab }: BrowserDriver, button: string): Promise<void> {
  const popup = await tab.openPopup();
  await sees(popup, 'nothing yet');
  await click(popup, button);
}

/** Waits for a slip that can be finished. */
export const slipOf = ({ tab }: BrowserDriver): Promise<SlipLook> =>
  until('the slip', async () => {
    const look = await lookAtSlip(tab);
    return look?.focus === 'own-words' && look;
  });

/** Keeps what is on the slip, and leaves it. */
export async function keepIt({ tab }: BrowserDriver): Promise<void> {
  await tab.press('Enter');
  await until('it to be kept', async () => (await lookAtSlip(tab))?.text.startsWith('Kept'));
  await tab.press('Escape');
  await until('the slip to go', async () => (await lookAtSlip(tab)) === null);
}

/** Clicks something on the slip with the real mouse. */
export async function clickOnSlip({ tab }: BrowserDriver, css: string): Promise<void> {
  const { x, y } = await until(`${css} on the slip`, () =>
    tab.inSlip((root, selector) => {
      const element = root?.querySelector(selector);
      element?.scrollIntoView({ block: 'nearest' });
      const box = element?.getBoundingClientRect();
      return box ? { x: box.x + box.width / 2, y: box.y + box.height / 2 } : null;
    }, css),
  );
  await tab.clickAt(x, y);
}

/** Opens the clip that was kept last, in the desk. */
export async function openLastClip({ tab }: BrowserDriver): Promise<void> {
  await tab.gotoDesk('#/clips');
  await until('the clip in the list', () =>
    tab.run(() => {
      const first = document.querySelector<HTMLAnchorElement>('.excerpt');
      first?.click();
      return first !== null;
    }),
  );
  await sees(tab, 'In your own words');
}

export interface KeptPicture {
  alt: string;
  /** In pixels of the picture. */
  width: number;
  height: number;
  /** As it is shown, in CSS pixels. */
  shown: [width: number, height: number];
  /** The colours at these points, which are shares of its width and height. */
  colours: number[][];
}

/** The pictures of the clip that was kept last, as the desk shows them, with the colours at some points. */
export async function lastPictures(
  driver: BrowserDriver,
  points: [across: number, down: number][],
): Promise<{ text: string; pictures: KeptPicture[] }> {
  await openLastClip(driver);
  const { tab } = driver;
  return until('the pictures in the desk', () =>
    tab.run((places) => {
      const images = [...document.querySelectorAll<HTMLImageElement>('.passage img, .pictures img')];
      if (images.length === 0 || images.some((image) => !image.complete || image.naturalWidth === 0))
        return null;
      return {
        text: document.querySelector<HTMLElement>('.passage')!.innerText,
        pictures: images.map((image) => {
          const { naturalWidth: width, naturalHeight: height, alt } = image;
          const canvas = document.createElement('canvas');
          Object.assign(canvas, { width, height });
          const pen = canvas.getContext('2d')!;
          pen.drawImage(image, 0, 0);
          const colours = places.map(([across, down]) => [
            ...pen.getImageData(Math.floor(across * width), Math.floor(down * height), 1, 1).data.slice(0, 3),
          ]);
          return {
            alt,
            width,
            height,
            shown: [image.clientWidth, image.clientHeight] as [number, number],
            colours,
          };
        }),
      };
    }, points),
  );
}
