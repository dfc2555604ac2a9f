import { findVideo } from '#lib/capture/moment/find-video.ts';
import { parseMoment } from '#lib/capture/links/media-fragment.ts';
import type { Selector } from '#lib/model/selector.ts';
import { goTo } from './go-to.ts';

/**
 * Goes to the moment of the page's video that these selectors name, as soon as the video can; gives whether they name
 * one.
 */
export function returnToMoment(doc: Document, selectors: readonly Selector[], signal: AbortSignal): boolean {
  const moment = selectors
    .map((one) => (one.type === 'FragmentSelector' ? parseMoment(one.value) : null))
    .find((one) => one !== null);
  if (!moment) return false;
  const video = findVideo(doc);
  if (video) goTo(video, moment);
  // These events do not rise, but the document hears them on their way down.
  else
    doc.addEventListener('loadedmetadata', ({ target }) => goTo(target as HTMLVideoElement, moment), {
      capture: true,
      once: true,
      signal,
    });
  return true;
}
