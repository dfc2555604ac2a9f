import type { Moment } from '#lib/capture/links/media-fragment.ts';

/** Goes to a moment of a video; a stretch of it is played to its end. */
export function goTo(video: HTMLVideoElement, { start, end }: Moment): void {
  video.currentTime = start;
  if (end === undefined) return;
  const over = new AbortController();
  const { signal } = over;
  video.addEventListener(
    'timeupdate',
    () => {
      if (video.currentTime < end) return;
      video.pause();
      over.abort();
    },
    { signal },
  );
  // Going elsewhere, the student has done with the stretch.
  video.addEventListener('seeked', () => video.addEventListener('seeking', () => over.abort(), { signal }), {
    signal,
    once: true,
  });
  // Where the browser lets no video start by itself, the student presses play.
  void video.play().catch(() => undefined);
}
