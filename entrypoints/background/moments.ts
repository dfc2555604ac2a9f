import { passageKey } from '#lib/capture/same-passage.ts';
import { parseMoment } from '#lib/capture/links/media-fragment.ts';
import type { Clip } from '#lib/model/clip.ts';
import type { KeptMoment } from '#lib/model/message.ts';
import { FRAGMENT_OF, type Selector } from '#lib/model/selector.ts';

interface Telling {
  text: string;
  selectors?: Selector[] | undefined;
  framed?: boolean | undefined;
}

/**
 * Whether a clip of the same source is the one that is to be kept. A moment of a video and a frame of a PDF are known
 * again by their place, a passage by its words; a diagram that was framed on a page is another one each time.
 */
export function sameAs({ text, selectors = [], framed = false }: Telling): (clip: Clip) => boolean {
  const key = passageKey(text);
  const place = placeAlone(selectors);
  return (clip) => {
    if (framed || placeAlone(clip.selectors) !== place) return false;
    // A picture without words is like no other.
    return place !== null || (key !== '' && passageKey(clip.text) === key);
  };
}

/** The moments of a video among the clips of its page, in the order of time. */
export function momentsAmong(clips: readonly Clip[]): KeptMoment[] {
  return clips
    .flatMap(({ id, selectors, ownWords, text }) => {
      const fragment = fragmentOf(selectors);
      const moment = fragment === null ? null : parseMoment(fragment);
      return moment
        ? [{ start: moment.start, kept: { clipId: id, fragment: fragment!, text: ownWords || text } }]
        : [];
    })
    .sort((a, b) => a.start - b.start)
    .map(({ kept }) => kept);
}

/** The fragment of what has no words of its source's own to go by. */
function placeAlone(selectors: readonly Selector[]): string | null {
  const [only] = selectors;
  return selectors.length === 1 && only?.type === 'FragmentSelector' ? only.value : null;
}

function fragmentOf(selectors: readonly Selector[]): string | null {
  const found = selectors.find(
    (one) => one.type === 'FragmentSelector' && one.conformsTo === FRAGMENT_OF.media,
  );
  return found?.type === 'FragmentSelector' ? found.value : null;
}
