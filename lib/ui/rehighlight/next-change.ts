/** Resolves when the document's content changes for the first time from now on, or when `signal` aborts. */
export function nextChange(doc: Document, signal: AbortSignal): Promise<void> {
  return new Promise((resolve) => {
    const end = () => {
      // A page that changes without end is heard once.
      watch.disconnect();
      signal.removeEventListener('abort', end);
      resolve();
    };
    const watch = new MutationObserver(end);
    watch.observe(doc.documentElement, { childList: true, subtree: true, characterData: true });
    signal.addEventListener('abort', end);
    if (signal.aborted) end();
  });
}

/** Resolves after so many ms, or when `signal` aborts. */
export function after(ms: number, signal: AbortSignal): Promise<void> {
  return new Promise((resolve) => {
    const end = () => {
      clearTimeout(timer);
      signal.removeEventListener('abort', end);
      resolve();
    };
    const timer = setTimeout(end, ms);
    signal.addEventListener('abort', end);
    if (signal.aborted) end();
  });
}
