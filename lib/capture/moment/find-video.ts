/**
 * The video that a student means: one that plays, else the one that takes most of the window; of this page, of its open
 * shadow trees, and of frames of the same site. Null where there is none with a picture.
 */
export function findVideo(doc: Document): HTMLVideoElement | null {
  const videos = videosIn(doc, 0).map((video) => ({ video, size: sizeInView(video) }));
  // Players keep spare ones about that are not shown.
  const shown = videos.filter(({ size, video }) => size > 0 && video.readyState > 0);
  const playing = shown.filter(({ video }) => !video.paused && !video.ended);
  const best = (playing.length > 0 ? playing : shown).sort((a, b) => b.size - a.size)[0];
  return (best ?? videos.find(({ video }) => video.readyState > 0))?.video ?? null;
}

const DEEPEST = 4;

function videosIn(root: Document | ShadowRoot, depth: number): HTMLVideoElement[] {
  const found = [...root.querySelectorAll('video')];
  if (depth === DEEPEST) return found;
  for (const frame of root.querySelectorAll('iframe')) {
    const inner = documentOf(frame);
    if (inner) found.push(...videosIn(inner, depth + 1));
  }
  for (const { shadowRoot } of root.querySelectorAll('*')) {
    if (shadowRoot) found.push(...videosIn(shadowRoot, depth + 1));
  }
  return found;
}

function documentOf(frame: HTMLIFrameElement): Document | null {
  try {
    return frame.contentDocument;
  } catch {
    // Another site's.
    return null;
  }
}

/** How much of its window the video takes, in square CSS pixels. */
function sizeInView(video: HTMLVideoElement): number {
  const view = video.ownerDocument.defaultView;
  if (!view) return 0;
  const { left, top, right, bottom } = video.getBoundingClientRect();
  const across = Math.min(right, view.innerWidth) - Math.max(left, 0);
  const down = Math.min(bottom, view.innerHeight) - Math.max(top, 0);
  return across > 0 && down > 0 ? across * down : 0;
}
