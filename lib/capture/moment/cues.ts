import { oneLine } from '../limits.ts';
import type { Moment } from '../links/media-fragment.ts';

/** What is needed of a text track and its cues. */
export interface CaptionTrack {
  kind: string;
  mode: string;
  cues: ArrayLike<{ startTime: number; endTime: number; text?: string }> | null;
}

const NAMED: Readonly<Record<string, string>> = {
  amp: '&',
  lt: '<',
  gt: '>',
  nbsp: '\u00a0',
  lrm: '\u200e',
  rlm: '\u200f',
};

/** A cue's text without WebVTT's tags and escapes, on one line. */
export function cueText(text: string): string {
  const bare = text.replace(/<[^>]*>/g, '').replace(/&(\w+);/g, (all, name: string) => NAMED[name] ?? all);
  return oneLine(bare.replace(/^- /gm, '– '));
}

/**
 * The captions that are shown at a moment, or from its start to its end: of the first track of captions or subtitles
 * that the page has switched on, shown or hidden, and that has any there. One line for each.
 */
export function captionsAt(tracks: Iterable<CaptionTrack>, { start, end = start }: Moment): string {
  for (const { kind, mode, cues } of tracks) {
    if (!/^(captions|subtitles)$/.test(kind) || mode === 'disabled' || !cues) continue;
    const lines = Array.from(cues)
      .filter((cue) => cue.startTime <= end && cue.endTime > start)
      .map((cue) => cueText(cue.text ?? ''))
      .filter(Boolean);
    if (lines.length > 0) return [...new Set(lines)].join('\n');
  }
  return '';
}
