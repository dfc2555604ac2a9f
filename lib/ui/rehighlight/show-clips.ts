import { findPassages } from '#lib/capture/find/find-passages.ts';
import { clearRanges, paintRanges } from '#lib/capture/find/highlight.ts';
import { readPlace } from '#lib/capture/page/place.ts';
import type { ClipsHere } from '#lib/model/message.ts';
import { returnToMoment } from '../moment/return-to-moment.ts';
import { send } from '../send.ts';
import { sayGone } from './say-gone.tsx';

const NAME = 'plumbline-clips';
/** A page that rewrites itself is looked through again after a rest, and not for ever. */
const REST = 1500;
const MOST_LOOKS = 20;

/** Shows the clips of a page where they are, without touching the page; says so when the one that was opened is gone. */
export async function showClips(doc: Document, signal: AbortSignal): Promise<void> {
  const here = await send('clipsHere', { url: readPlace(doc).url });
  if (here.clips.length === 0 || signal.aborted) return;
  const opened = await look(doc, here);
  if (opened) bringIntoView(opened);
  else if (here.openedId !== null) lead(doc, here.openedId, here, signal);
  lookAgainOnChange(doc, here, signal);
}

/** Where the clip that was opened is no passage found in the page: to its moment, or a word that it is gone. */
function lead(doc: Document, openedId: string, { clips }: ClipsHere, signal: AbortSignal): void {
  const selectors = clips.find(({ clipId }) => clipId === openedId)?.selectors ?? [];
  if (returnToMoment(doc, selectors, signal)) return;
  // A picture without a caption has no place to be found by.
  if (selectors.some(({ type }) => type === 'TextQuoteSelector')) sayGone(doc, openedId);
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
