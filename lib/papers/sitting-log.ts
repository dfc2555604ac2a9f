import type { Id, Millis } from '#lib/model/basics.ts';
import type { Sitting, SittingEvent } from '#lib/model/sitting.ts';
import { allowedMillis, endsAt, restMillis, type Stretch } from './clock.ts';

/**
 * What is odd in a sitting's record:
 * - `endedTwice`: it was ended in two windows; the first end counts;
 * - `afterEnd`: something happened after it was ended, and counts for nothing;
 * - `beforeStart`: something is dated before the start (a clock was set back), and counts from the start;
 * - `restNotAllowed`: a rest break without that access arrangement; it does not stop the clock;
 * - `restBeganTwice`: a rest break began within another; the two are one;
 * - `restEndedAlone`, `returnedAlone`: an end without a beginning, which counts for nothing.
 */
export type LogRemark =
  | 'endedTwice'
  | 'afterEnd'
  | 'beforeStart'
  | 'restNotAllowed'
  | 'restBeganTwice'
  | 'restEndedAlone'
  | 'returnedAlone';

/** A sitting, as its events tell it. */
export interface SittingLog {
  /** Null while it runs. Time that is up does not end it: an answer may still be finished, over time. */
  endedAt: Millis | null;
  /** Rest breaks that stop the clock, in order; the last may run. */
  rests: Stretch[];
  /** When the page was left: breaks in conditions, in order; the last may run. */
  breaks: Stretch[];
  /** Working time at each part, in milliseconds, up to the end or the moment asked about. */
  partMillis: Map<Id, Millis>;
  /** How far it ran over, in milliseconds; 0 where it did not. */
  overMillis: Millis;
  remarks: { about: LogRemark; eventId: Id }[];
}

/**
 * Puts the events of a sitting together. Their order does not matter, nor does it that one comes twice: two windows
 * may show the same sitting, and both write.
 *
 * @param at the moment to look from, for what still runs
 */
export function sittingLog(sitting: Sitting, events: readonly SittingEvent[], at: Millis): SittingLog {
  const remarks: SittingLog['remarks'] = [];
  const remark = (about: LogRemark, { id }: SittingEvent): void => void remarks.push({ about, eventId: id });
  const own = [...new Map(events.map((event) => [event.id, event])).values()]
    .filter(({ sittingId }) => sittingId === sitting.id)
    .sort((a, b) => a.at - b.at || (a.id < b.id ? -1 : 1));
  const ends = own.filter(({ kind }) => kind === 'ended');
  ends.slice(1).forEach((event) => remark('endedTwice', event));
  const endedAt = ends[0] ? Math.max(sitting.startedAt, ends[0].at) : null;
  const counted: SittingEvent[] = [];
  for (const event of own) {
    if (event.kind === 'ended') continue;
    if (endedAt !== null && event.at > endedAt) remark('afterEnd', event);
    else {
      if (event.at < sitting.startedAt) remark('beforeStart', event);
      counted.push({ ...event, at: Math.max(sitting.startedAt, event.at) });
    }
  }
  const rests = restsOf(sitting, counted, endedAt, remark);
  const breaks = breaksOf(counted, endedAt, remark);
  const until = endedAt ?? Math.max(at, sitting.startedAt);
  return {
    endedAt,
    rests,
    breaks,
    partMillis: partTimes(sitting, counted, rests, until),
    overMillis: Math.max(0, until - endsAt(sitting, rests, until)),
    remarks,
  };
}

type Tell = (about: LogRemark, event: SittingEvent) => void;

function restsOf(
  { restBreaks }: Sitting,
  events: readonly SittingEvent[],
  endedAt: Millis | null,
  remark: Tell,
): Stretch[] {
  const rests: Stretch[] = [];
  let from: Millis | null = null;
  for (const event of events) {
    if (event.kind === 'restBegan') {
      if (!restBreaks) remark('restNotAllowed', event);
      else if (from !== null) remark('restBeganTwice', event);
      else from = event.at;
    } else if (event.kind === 'restEnded' && restBreaks) {
      if (from === null) remark('restEndedAlone', event);
      else {
        rests.push({ from, to: event.at });
        from = null;
      }
    }
  }
  if (from !== null) rests.push({ from, to: endedAt });
  return rests;
}

/** A page that is left twice, in two windows, is left until the student comes back to one of them. */
function breaksOf(events: readonly SittingEvent[], endedAt: Millis | null, remark: Tell): Stretch[] {
  const breaks: Stretch[] = [];
  let from: Millis | null = null;
  for (const event of events) {
    if (event.kind === 'left') from ??= event.at;
    else if (event.kind === 'returned') {
      if (from === null) remark('returnedAlone', event);
      else {
        breaks.push({ from, to: event.at });
        from = null;
      }
    }
  }
  if (from !== null) breaks.push({ from, to: endedAt });
  return breaks;
}

function partTimes(
  { startedAt }: Sitting,
  events: readonly SittingEvent[],
  rests: readonly Stretch[],
  until: Millis,
): Map<Id, Millis> {
  const times = new Map<Id, Millis>();
  const turns = events.filter((event) => event.kind === 'turnedTo');
  turns.forEach(({ partId, at }, i) => {
    const to = Math.min(until, turns[i + 1]?.at ?? until);
    const rested = restMillis(rests, startedAt, to) - restMillis(rests, startedAt, Math.min(at, to));
    times.set(partId, (times.get(partId) ?? 0) + Math.max(0, to - at) - rested);
  });
  return times;
}

/** Sittings of a paper that were begun and not ended, the oldest first: one to go on with, before another is begun. */
export function openSittings(
  paperId: Id,
  sittings: readonly Sitting[],
  events: readonly SittingEvent[],
): Sitting[] {
  const ended = new Set(events.filter(({ kind }) => kind === 'ended').map(({ sittingId }) => sittingId));
  return sittings
    .filter((sitting) => sitting.paperId === paperId && !ended.has(sitting.id))
    .sort((a, b) => a.startedAt - b.startedAt);
}

/** Time spent on a part beside the time that its marks allow. */
export interface Pace {
  partId: Id;
  /** Milliseconds at the part. */
  spent: Millis;
  /** Milliseconds that its marks allow: its part of the paper's marks, of the time of the sitting. */
  due: Millis;
}

/** Time spent against marks, part by part in the order of the paper. Parts that were never turned to have 0 spent. */
export function paces(
  sitting: Sitting,
  parts: readonly { id: Id; marks: number }[],
  partMillis: ReadonlyMap<Id, Millis>,
): Pace[] {
  const total = parts.reduce((sum, { marks }) => sum + marks, 0);
  const allowed = allowedMillis(sitting);
  return parts.map(({ id, marks }) => ({
    partId: id,
    spent: partMillis.get(id) ?? 0,
    due: total > 0 ? (allowed * marks) / total : 0,
  }));
}
