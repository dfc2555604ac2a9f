/** What a selector by such a fragment conforms to: as lib/model/selector.ts has it, whose schemas no page may carry. */
export const MEDIA_FRAGMENTS = 'http://www.w3.org/TR/media-frags/' as const;

/** A moment of a video or sound, in seconds: from the start, which is played, up to the end, which is not. */
export interface Moment {
  start: number;
  end?: number;
}

/**
 * A temporal fragment after Media Fragments URI 1.0 (4.2.1): `t=30,60.5` in seconds of normal play time, to a tenth. An
 * end that is then no later than the start is left out: it would name nothing.
 */
export function momentFragment({ start, end }: Moment): string {
  const from = tenths(start);
  const to = end === undefined ? from : tenths(end);
  return to > from ? `t=${from},${to}` : `t=${from}`;
}

const tenths = (seconds: number): number => Math.round(Math.max(0, seconds) * 10) / 10;

/**
 * The moment that a fragment names, after Media Fragments URI 1.0; null for none. Of several, the last valid one
 * counts (6.2.1). An end that does not lie behind the start, or a stray comma, makes one invalid (6.2.2).
 */
export function parseMoment(fragment: string): Moment | null {
  let moment: Moment | null = null;
  for (const pair of fragment.replace(/^#/, '').split('&')) {
    const equals = pair.indexOf('=');
    if (equals < 0 || decode(pair.slice(0, equals)) !== 't') continue;
    moment = parseTimes(decode(pair.slice(equals + 1))) ?? moment;
  }
  return moment;
}

function decode(text: string): string {
  try {
    return decodeURIComponent(text);
  } catch {
    return text;
  }
}

function parseTimes(value: string): Moment | null {
  const times = value.replace(/^npt:/, '').split(',');
  const [first, last] = times;
  if (times.length === 1) {
    const start = parseTime(first!);
    return start === null ? null : { start };
  }
  const start = first === '' ? 0 : parseTime(first!);
  const end = parseTime(last!);
  return times.length === 2 && start !== null && end !== null && end > start ? { start, end } : null;
}

const SECONDS = /^\d+(\.\d*)?$/;
const CLOCK = /^(?:(\d+):)?([0-5]\d):([0-5]\d(?:\.\d*)?)$/;

/** `ss.fff`, `mm:ss.fff` or `hh:mm:ss.fff`; null for anything else. */
function parseTime(time: string): number | null {
  if (SECONDS.test(time)) return Number(time);
  const [, hours = '0', minutes, rest] = CLOCK.exec(time) ?? [];
  return minutes === undefined ? null : Number(hours) * 3600 + Number(minutes) * 60 + Number(rest);
}

/** The address of a video at a moment. Whatever else its fragment says stays. */
export function momentUrl(url: string, moment: Moment): string {
  const hash = url.indexOf('#');
  const base = hash < 0 ? url : url.slice(0, hash);
  const kept = (hash < 0 ? '' : url.slice(hash + 1)).split('&').filter((pair) => pair && !/^t=/.test(pair));
  return `${base}#${[...kept, momentFragment(moment)].join('&')}`;
}
