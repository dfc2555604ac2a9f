import { useCallback, useLayoutEffect, useRef, useState } from 'preact/hooks';

/** Pixels of the screen for a point at full size: 96 and 72 to the inch. */
export const FULL_SIZE = 96 / 72;
const STEPS = [0.25, 0.5, 0.67, 0.8, 0.9, 1, 1.1, 1.25, 1.5, 1.75, 2, 2.5, 3, 4];

export interface Zoom {
  /** Pixels of the screen for a point. */
  scale: number;
  isFit: boolean;
  fit(): void;
  closer(): void;
  farther(): void;
}

/** How large pages are shown: by steps, or as wide as the column. What stands at the top of the window stays there. */
export function useZoom(holder: { current: HTMLElement | null }, pageWidth: number): Zoom {
  const [room, setRoom] = useState(0);
  const [chosen, setChosen] = useState<number | null>(null);
  const anchor = useRef<Anchor | null>(null);
  const scale = chosen === null ? Math.max(0.1, room / pageWidth) : chosen * FULL_SIZE;

  useLayoutEffect(() => {
    const element = holder.current!;
    const watch = new ResizeObserver(() => {
      // Its height changes too, with the size of the pages: that is no change of room.
      setRoom((before) => {
        const now = roomIn(element);
        if (now !== before) anchor.current = anchorIn(element);
        return now;
      });
    });
    watch.observe(element);
    setRoom(roomIn(element));
    return () => watch.disconnect();
  }, [holder]);

  useLayoutEffect(() => {
    const { current } = anchor;
    anchor.current = null;
    if (current?.page.isConnected)
      scrollBy({ top: current.page.getBoundingClientRect().top + shareOf(current) });
  }, [scale]);

  const to = useCallback(
    (next: number | null) => {
      anchor.current = anchorIn(holder.current!);
      setChosen(next);
    },
    [holder],
  );
  const now = scale / FULL_SIZE;
  return {
    scale,
    isFit: chosen === null,
    fit: () => to(null),
    closer: () => to(STEPS.find((step) => step > now * 1.01) ?? STEPS.at(-1)!),
    farther: () => to(STEPS.findLast((step) => step < now * 0.99) ?? STEPS[0]!),
  };
}

const roomIn = (element: HTMLElement): number => {
  const { paddingLeft, paddingRight } = getComputedStyle(element);
  return element.clientWidth - parseFloat(paddingLeft) - parseFloat(paddingRight);
};

/** The page at the top of the window, and how far down in it the top is, as a share of its height. */
interface Anchor {
  page: HTMLElement;
  share: number;
}

const shareOf = ({ page, share }: Anchor): number => share * page.getBoundingClientRect().height;

function anchorIn(holder: HTMLElement): Anchor | null {
  for (const page of holder.querySelectorAll<HTMLElement>('[data-page]')) {
    const { top, bottom, height } = page.getBoundingClientRect();
    if (bottom > 0) return height > 0 ? { page, share: -top / height } : null;
  }
  return null;
}
