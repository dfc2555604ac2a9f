import { useEffect, useState } from 'preact/hooks';
import { pageOf } from './use-near-pages.ts';

/** First and last page that the student's selection touches; null while nothing in the pages is selected. */
export function useSelection(): { first: number; last: number } | null {
  const [touched, setTouched] = useState<{ first: number; last: number } | null>(null);
  useEffect(() => {
    const closing = new AbortController();
    const look = () => {
      const range = selectedRange();
      const first = range && (pageOf(range.startContainer) ?? pageOf(range.endContainer));
      const last = range && (pageOf(range.endContainer) ?? first);
      const next = first && last ? { first, last } : null;
      setTouched((before) => (before?.first === next?.first && before?.last === next?.last ? before : next));
    };
    document.addEventListener('selectionchange', look, { signal: closing.signal });
    return () => closing.abort();
  }, []);
  return touched;
}

/** The range that is selected in the page; null where nothing is. */
export function selectedRange(): Range | null {
  const selection = getSelection();
  return selection && selection.rangeCount > 0 && !selection.isCollapsed ? selection.getRangeAt(0) : null;
}
