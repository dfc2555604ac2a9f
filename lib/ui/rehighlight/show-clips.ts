import { readPlace } from '#lib/capture/page/place.ts';
import { send } from '../send.ts';
import { ClipsInPage } from './clips-in-page.ts';
import { leadTo } from './lead-to.ts';
import { after, nextChange } from './next-change.ts';

/** After a change, a page has so many ms for more of them before it is looked through again. */
const REST = 600;
/** And so many times as long as the last look took: what never rests is looked through, but little. */
const RESTS_PER_LOOK = 30;

/**
 * Shows the clips of a page where they are, without touching the page, and again whenever it has rewritten itself; leads
 * to the one that was opened. Ends when `signal` aborts.
 */
export async function showClips(doc: Document, signal: AbortSignal): Promise<void> {
  const answer = await send('clipsHere', { url: readPlace(doc).url });
  if (answer.clips.length === 0 || signal.aborted) return;
  const here = new ClipsInPage(doc, answer.clips, signal);
  const lead = leadTo(doc, answer, here, signal);
  while (!signal.aborted) {
    // Heard from before the look on: what changes meanwhile is looked at next time.
    const changed = nextChange(doc, signal);
    const busy = await here.look();
    lead.looked();
    await changed;
    lead.changed();
    await after(Math.max(REST, RESTS_PER_LOOK * busy), signal);
  }
}

/** Shows the clips of whatever page stands in the document: pages that load nothing anew change their address alone. */
export function followPage(doc: Document): void {
  const view = doc.defaultView!;
  let visit = begin(doc);
  const startAgain = () => {
    visit.leave();
    visit = begin(doc);
  };
  view.addEventListener('pagehide', () => visit.leave());
  // Taken out of the browser's store of pages as it was, after the student went back.
  view.addEventListener('pageshow', ({ persisted }) => persisted && startAgain());
  // Older browsers lack it, and show the clips when the page is loaded.
  view.navigation?.addEventListener('currententrychange', () => {
    if (readPlace(doc).url !== visit.url) startAgain();
  });
}

function begin(doc: Document): { url: string; leave(): void } {
  const leaving = new AbortController();
  const leave = () => leaving.abort();
  // Without the extension behind it (just updated) there is nothing to show.
  showClips(doc, leaving.signal).catch(leave);
  return { url: readPlace(doc).url, leave };
}
