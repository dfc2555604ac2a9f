import { useLayoutEffect, useRef, useState } from 'preact/hooks';
import type { PrintBlock } from '#lib/notes/print/blocks.ts';
import { type PrintOptions, SidesCounter } from '../../print/sides-counter.ts';

/** A counter as it is now: another object whenever it has counted anew. */
export interface Counted {
  counter: SidesCounter;
  /** Nothing waits to be set. */
  isReady: boolean;
}

/** Blocks as they are laid out for printing; null until they are. */
export function useSides(blocks: readonly PrintBlock[], options: Required<PrintOptions>): Counted | null {
  const [counted, setCounted] = useState<Counted | null>(null);
  const current = useRef<SidesCounter | null>(null);
  const latest = useRef(blocks);
  latest.current = blocks;
  const { paper, columns, look } = options;
  const show = (counter: SidesCounter) => setCounted({ counter, isReady: counter.isReady });
  const count = (counter: SidesCounter) => {
    counter.set(latest.current);
    show(counter);
    if (!counter.isReady) void counter.ready.then(() => current.current === counter && show(counter));
  };
  useLayoutEffect(() => {
    const counter = new SidesCounter(document, { paper, columns, look });
    current.current = counter;
    count(counter);
    return () => {
      current.current = null;
      counter.close();
    };
    // eslint-disable-next-line react-hooks/exhaustive-deps -- `count` closes over nothing but what never changes
  }, [paper, columns, look]);
  useLayoutEffect(() => {
    if (current.current) count(current.current);
    // eslint-disable-next-line react-hooks/exhaustive-deps -- as above
  }, [blocks]);
  return counted;
}
