import { findPassages } from '#lib/capture/find/find-passages.ts';
import { clearRanges, paintRanges } from '#lib/capture/find/highlight.ts';
import { readPage } from '#lib/capture/page.ts';
import type { ClipsHere } from '#lib/model/message.ts';
import { send } from '../send.ts';
import { sayGone } from './say-gone.tsx';

const NAME = 'plumbline-clips';
/** A page that rewrites itself is looked through again after a rest, and not for ever. */
const REST = 1500;
const MOST_LOOKS = 20;

/** Shows the clips of a page where they are, without touching the page; says so when the one that was opened is gone. */
export async function showClips(doc: Document, signal: AbortSignal): Promise<void> {
  const here = await send('clipsHere', { url: readPage(doc).url });
  if (here.clips.length === 0 || signal.aborted) return;
  const opened = await look(doc, here);
  if (opened) bringIntoView(opened);
  else if (here.openedId !== null) sayGone(doc, here.openedId);
  lookAgainOnChange(doc, here, signal);
}

/** Finds and paints every clip; gives the place of the one that was opened. */
async function look(doc: Document, { clips, openedId }: ClipsHere): Promise<Range | null> {
  const pace = {
    now: () => performance.now(),
    pause: () => new Promise<void>((rested) => setTimeout(rested, 0)),
  };
  const ranges: Range[] = [];
  let opened: Range | null = null;
  for await (const { wanted, found } of findPassages(doc.body, clips, pace)) {
    if (!found) continue;
    ranges.push(found.range);
    if (wanted.clipId === openedId) opened = found.range;
  }
  paintRanges(doc.defaultView!, NAME, ranges);
  return opened;
}

function bringIntoView(range: Range): void {
  const { top, bottom } = range.getBoundingClientRect();
  // A text fragment in the address may have led there already.
  if (top >= 0 && bottom <= innerHeight) return;
  const start = range.startContainer;
  const element = start instanceof Element ? start : start.parentElement;
  element?.scrollIntoView({ block: 'center' });
}

function lookAgainOnChange(doc: Document, here: ClipsHere, signal: AbortSignal): void {
  let looks = 0;
  let resting: ReturnType<typeof setTimeout> | undefined;
  const watch = new MutationObserver(() => {
    if (resting !== undefined || looks >= MOST_LOOKS) return;
    resting = setTimeout(() => {
      resting = undefined;
      looks++;
      void look(doc, here);
    }, REST);
  });
  watch.observe(doc.body, { childList: true, subtree: true, characterData: true });
  signal.addEventListener('abort', () => {
    watch.disconnect();
    clearTimeout(resting);
    clearRanges(doc.defaultView!, NAME);
  });
}
