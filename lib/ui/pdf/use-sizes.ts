import { useCallback, useEffect, useRef, useState } from 'preact/hooks';
import type { PageSize } from '#lib/capture/pdf/frame.ts';
import type { PDFDocumentProxy } from './engine.ts';
import { sizeOf } from './open-pdf.ts';

/** Pages looked at between two drawings. */
const BATCH = 25;

export interface Sizes {
  /** Of all pages; those not looked at yet count as large as the first. */
  sizes: PageSize[];
  /** Resolves when the sizes of all pages up to this one are known and drawn. */
  known(upTo: number): Promise<void>;
}

/** The sizes of a document's pages, looked up one after the other. */
export function useSizes(doc: PDFDocumentProxy, first: PageSize): Sizes {
  const [sizes, setSizes] = useState<PageSize[]>(() => Array<PageSize>(doc.numPages).fill(first));
  const looking = useRef<Promise<void>[]>([]);
  useEffect(() => {
    let gone = false;
    const isSame = (a: PageSize, b: PageSize) => a.width === b.width && a.height === b.height;
    const look = async (from: number) => {
      const numbers = Array.from({ length: Math.min(BATCH, doc.numPages - from) }, (_, i) => from + i + 1);
      // A page that cannot be read keeps the first one's size.
      const found = await Promise.all(numbers.map((number) => doc.getPage(number).then(sizeOf, () => first)));
      if (gone || found.every((size) => isSame(size, first))) return;
      setSizes((before) => before.with(from, found[0]!).toSpliced(from, found.length, ...found));
      await new Promise((drawn) => requestAnimationFrame(drawn));
    };
    let last = Promise.resolve();
    for (let from = 0; from < doc.numPages; from += BATCH) {
      last = last.then(() => (gone ? undefined : look(from)));
      looking.current.push(last);
    }
    return () => {
      gone = true;
      looking.current = [];
    };
  }, [doc, first]);
  const known = useCallback(async (upTo: number) => looking.current[Math.floor((upTo - 1) / BATCH)], []);
  return { sizes, known };
}
