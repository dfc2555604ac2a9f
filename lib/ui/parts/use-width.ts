import { useLayoutEffect, useRef, useState } from 'preact/hooks';

/** The width of an element in whole CSS pixels, as it changes; `first` until it is known. */
export function useWidth<E extends HTMLElement>(first: number) {
  const box = useRef<E>(null);
  const [width, setWidth] = useState(first);
  useLayoutEffect(() => {
    const measure = () => setWidth(Math.floor(box.current?.clientWidth || first));
    measure();
    const watch = new ResizeObserver(measure);
    watch.observe(box.current!);
    return () => watch.disconnect();
  }, [first]);
  return { box, width };
}
