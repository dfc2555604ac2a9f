import { useEffect, useState } from 'preact/hooks';

/** The number of the page that a node stands in; null outside all pages. */
export function pageOf(node: Node | null): number | null {
  const element = node instanceof Element ? node : (node?.parentElement ?? null);
  const page = element?.closest<HTMLElement>('[data-page]')?.dataset.page;
  return page === undefined ? null : Number(page);
}

/** Pages within a window's height of the window: they are drawn, the rest is left blank. */
export function useNearPages(holder: { current: HTMLElement | null }, count: number): ReadonlySet<number> {
  const [near, setNear] = useState<ReadonlySet<number>>(new Set([1]));
  useEffect(() => {
    const watch = new IntersectionObserver(
      (changes) =>
        setNear((before) => {
          const now = new Set(before);
          for (const { target, isIntersecting } of changes) {
            const page = pageOf(target)!;
            if (isIntersecting) now.add(page);
            else now.delete(page);
          }
          return now;
        }),
      { rootMargin: '100% 0px' },
    );
    for (const page of holder.current!.querySelectorAll('[data-page]')) watch.observe(page);
    return () => watch.disconnect();
  }, [holder, count]);
  return near;
}
