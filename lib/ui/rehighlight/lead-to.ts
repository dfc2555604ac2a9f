import type { ClipsHere } from '#lib/model/message.ts';
import { returnToMoment } from '../moment/return-to-moment.ts';
import type { ClipsInPage } from './clips-in-page.ts';
import { sayGone } from './say-gone.tsx';

/** A passage is gone when it was not found and the page rested for so long, in ms; or, in a page without rest, after so long. */
const QUIET = 2000;
const LONGEST_WAIT = 10_000;

export interface Lead {
  /** The page was looked through. */
  looked(): void;
  /** The page has changed since, and will be looked through again. */
  changed(): void;
}

/**
 * Leads the student to the clip through which they came: to its moment or its passage, however late the page brings it,
 * or to a word that it is gone.
 */
export function leadTo(
  doc: Document,
  { clips, openedId }: ClipsHere,
  here: ClipsInPage,
  signal: AbortSignal,
): Lead {
  const selectors = clips.find(({ clipId }) => clipId === openedId)?.selectors ?? [];
  // A picture without a caption has no place to be found by.
  const hasWords = selectors.some(({ type }) => type === 'TextQuoteSelector');
  if (openedId === null || returnToMoment(doc, selectors, signal) || !hasWords)
    return { looked: () => undefined, changed: () => undefined };
  const latest = performance.now() + LONGEST_WAIT;
  let timer: ReturnType<typeof setTimeout> | undefined;
  let takeBack: (() => void) | undefined;
  const stop = () => {
    clearTimeout(timer);
    takeBack?.();
  };
  signal.addEventListener('abort', stop);
  let isThere = false;
  const looked = () => {
    if (isThere || signal.aborted) return;
    const range = here.rangeOf(openedId);
    if (range) {
      isThere = true;
      stop();
      bringIntoView(range);
    } else if (!takeBack) {
      const wait = Math.max(0, Math.min(QUIET, latest - performance.now()));
      timer = setTimeout(() => (takeBack = sayGone(doc, openedId)), wait);
    }
  };
  return { looked, changed: () => clearTimeout(timer) };
}

function bringIntoView(range: Range): void {
  const { top, bottom } = range.getBoundingClientRect();
  // A text fragment in the address may have led there already.
  if (top >= 0 && bottom <= innerHeight) return;
  const start = range.startContainer;
  const element = start instanceof Element ? start : start.parentElement;
  element?.scrollIntoView({ block: 'center' });
}
