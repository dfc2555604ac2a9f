import { useEffect, useState } from 'preact/hooks';
import type { Rect } from '#lib/capture/pdf/place.ts';

/** The page that is read now: the last one that begins in the upper third of the window. */
export function useCurrentPage(holder: { current: HTMLElement | null }): number {
  const [page, setPage] = useState(1);
  useEffect(() => {
    const closing = new AbortController();
    let waits = false;
    const look = () => {
      waits = false;
      setPage(pageAt(holder.current, innerHeight / 3));
    };
    const later = () => {
      if (!waits) requestAnimationFrame(look);
      waits = true;
    };
    addEventListener('scroll', later, { signal: closing.signal, passive: true });
    addEventListener('resize', later, { signal: closing.signal });
    return () => closing.abort();
  }, [holder]);
  return page;
}

function pageAt(holder: HTMLElement | null, height: number): number {
  const pages = [...(holder?.querySelectorAll<HTMLElement>('[data-page]') ?? [])];
  // Pages stand in order, so half of those left can be passed over at each look.
  let [low, high] = [0, pages.length - 1];
  while (low < high) {
    const middle = Math.ceil((low + high) / 2);
    if (pages[middle]!.getBoundingClientRect().top <= height) low = middle;
    else high = middle - 1;
  }
  return low + 1;
}

/** Brings a page, or a part of it, into view below the bar. */
export function scrollToPage(holder: HTMLElement, number: number, rect: Rect | null, scale: number): void {
  const page = holder.querySelector<HTMLElement>(`[data-page="${number}"]`);
  if (!page) return;
  const bar = parseFloat(getComputedStyle(page).scrollMarginTop) || 0;
  const above = rect ? Math.max(0, rect.top * scale - innerHeight / 4) : 0;
  scrollTo({ top: scrollY + page.getBoundingClientRect().top + above - bar });
}

/** Gives a page the keyboard, so that reading goes on from there. */
export function focusPage(holder: HTMLElement | null, number: number): void {
  holder?.querySelector<HTMLElement>(`[data-page="${number}"]`)?.focus({ preventScroll: true });
}
