import { useLayoutEffect, useState } from 'preact/hooks';

/** Takes files that are dropped anywhere on the page; gives whether one is held over it. */
export function useDrop(take: (file: File) => void): boolean {
  const [isOver, setOver] = useState(false);
  useLayoutEffect(() => {
    const closing = new AbortController();
    const { signal } = closing;
    const hasFile = (event: DragEvent) => event.dataTransfer?.types.includes('Files') ?? false;
    const over = (event: DragEvent) => {
      if (!hasFile(event)) return;
      event.preventDefault();
      setOver(true);
    };
    addEventListener('dragover', over, { signal });
    addEventListener(
      'dragleave',
      (event) => {
        // Leaving an element for another is no leaving of the page.
        if (event.relatedTarget === null) setOver(false);
      },
      { signal },
    );
    addEventListener(
      'drop',
      (event) => {
        setOver(false);
        const file = event.dataTransfer?.files[0];
        if (!file) return;
        // Else the browser would leave this page for the file.
        event.preventDefault();
        take(file);
      },
      { signal },
    );
    return () => closing.abort();
  }, [take]);
  return isOver;
}
