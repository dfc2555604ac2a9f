import { render } from 'preact';
import { headingsAbove } from '#lib/capture/headings.ts';
import { captionsAt } from '#lib/capture/moment/cues.ts';
import { boxInTop } from '#lib/capture/frames.ts';
import { MEDIA_FRAGMENTS, type Moment, momentFragment } from '#lib/capture/links/media-fragment.ts';
import { findVideo } from '#lib/capture/moment/find-video.ts';
import { readPlace } from '#lib/capture/page/place.ts';
import { figureOf } from '#lib/capture/pictures/figure.ts';
import { readPictures } from '#lib/capture/pictures/read-pictures.ts';
import { StudentError } from '#lib/model/student-error.ts';
import { shown } from '../frame/shown.ts';
import { send } from '../send.ts';
import type { Subject } from '../slip/subject.ts';
import { MomentFields } from './moment-fields.tsx';
import { goTo } from './go-to.ts';
import { type Times, faultOf } from './times.ts';

/**
 * The moment that the page's video shows, as a subject for the slip: a still of it, its captions, and fields in which the
 * student may change its times. The video is paused meanwhile.
 * Errors: StudentErrors `errorNoVideo`, `errorPageAddress`.
 */
export async function momentSubject(doc: Document): Promise<Subject> {
  const video = findVideo(doc);
  if (!video) throw new StudentError('errorNoVideo');
  video.pause();
  // Nothing of the page's is seen over a video that fills the screen.
  if (doc.fullscreenElement) await doc.exitFullscreen();
  const page = { ...readPlace(doc), kind: 'video' as const };
  let times: Times = { start: video.currentTime, end: null };
  const pictures = await stillOf(video, doc);
  return {
    page,
    pictures,
    headings: headingsAbove(doc, rangeAt(video, doc)),
    get passage() {
      const text = captionsAt(video.textTracks, momentOf(times)) || page.title;
      const places = pictures.map(({ alt }) => ({
        alt,
        width: video.clientWidth,
        height: video.clientHeight,
      }));
      return { text, html: figureOf(doc, text, places) };
    },
    get selectors() {
      const value = momentFragment(momentOf(times));
      return [{ type: 'FragmentSelector' as const, conformsTo: MEDIA_FRAGMENTS, value }];
    },
    place: () => boxInTop(video),
    fault: () => faultOf(times, video.duration),
    more(into, { state, leave, refresh }) {
      const change = (next: Times) => {
        times = next;
        if (!faultOf(times, video.duration)) refresh();
      };
      const go = (moment: Moment) => {
        leave();
        goTo(video, moment);
      };
      render(
        <MomentFields
          first={times}
          duration={video.duration}
          kept={state.moments ?? []}
          change={change}
          go={go}
        />,
        into,
      );
    },
  };
}

/** The moment that the fields say; where they say none, the one that the video shows. */
function momentOf({ start, end }: Times): Moment {
  const from = typeof start === 'number' ? start : 0;
  return typeof end === 'number' && end > from ? { start: from, end } : { start: from };
}

async function stillOf(video: HTMLVideoElement, doc: Document): Promise<Subject['pictures']> {
  const isOfTop = video.ownerDocument === doc;
  const [still] = await readPictures([video], video.ownerDocument.defaultView!, async (parts) => {
    // A part of a frame's window is none of the tab's.
    if (!isOfTop) return [];
    await shown(doc);
    return send('takePictures', { parts }).catch(() => []);
  });
  return still ? [still] : [];
}

/** Where the video stands among the page's headings. */
function rangeAt(video: HTMLVideoElement, doc: Document): Range {
  let at: Element = video;
  for (let root = at.getRootNode(); root !== doc; root = at.getRootNode()) {
    const around =
      (root as Partial<ShadowRoot>).host ?? (root as Partial<Document>).defaultView?.frameElement ?? null;
    if (!around) break;
    at = around;
  }
  const range = doc.createRange();
  range.selectNode(at.getRootNode() === doc ? at : doc.body);
  return range;
}
