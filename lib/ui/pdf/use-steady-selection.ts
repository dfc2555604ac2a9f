import { useEffect } from 'preact/hooks';

/**
 * Keeps a selection steady while the pointer passes over blank parts of a page. A page's words stand one by one over
 * its picture; between them a browser takes the pointer to be past the last word, and the selection would leap to the
 * end of the page. So while the pointer is down, a blank element stands right behind the last selected word and
 * catches it.
 */
export function useSteadySelection(holder: { current: HTMLElement | null }): void {
  useEffect(() => {
    const closing = new AbortController();
    const { signal } = closing;
    const blank = document.createElement('div');
    blank.className = 'pdf-blank';
    let before: Range | null = null;
    const stop = () => {
      blank.remove();
      before = null;
    };
    const follow = () => {
      if (!blank.isConnected) return;
      const selection = getSelection();
      if (!selection?.rangeCount) return;
      const range = selection.getRangeAt(0);
      // The end that stayed is where the student began.
      const movesStart =
        before !== null &&
        range.compareBoundaryPoints(Range.END_TO_END, before) === 0 &&
        range.compareBoundaryPoints(Range.START_TO_START, before) !== 0;
      before = range.cloneRange();
      const moving = movesStart ? range.startContainer : range.endContainer;
      const word = (moving instanceof Element ? moving : moving.parentElement)?.closest('.pdf-text span');
      if (!word || word.nextSibling === blank) return;
      if (movesStart) word.before(blank);
      else word.after(blank);
    };
    holder.current!.addEventListener(
      'pointerdown',
      (event) => {
        const layer = (event.target as Element).closest('.pdf-text');
        if (!layer || event.pointerType !== 'mouse' || event.button !== 0) return;
        layer.append(blank);
      },
      { signal },
    );
    for (const end of ['pointerup', 'pointercancel', 'blur'] as const)
      addEventListener(end, stop, { signal });
    document.addEventListener('selectionchange', follow, { signal });
    return () => {
      closing.abort();
      stop();
    };
  }, [holder]);
}
