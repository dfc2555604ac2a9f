import { useCallback, useEffect, useMemo, useRef, useState } from 'preact/hooks';
import type { Line } from '#lib/model/item.ts';
import { isPrinted, lineBlock, noteBlocks } from '#lib/notes/print/blocks.ts';
import { usePictures } from '../../parts/pictures.tsx';
import { SidesCounter } from '../../print/sides-counter.ts';
import { useSameRows } from '../../same-rows.ts';
import type { CourseNotes } from './use-notes.ts';

/** How much the notes print to. */
export interface SidesNow {
  sides: number;
  /** What part of a side each topic takes. */
  byTopic: ReadonlyMap<string, number>;
}

export interface LiveCount {
  /** Null until it has been counted once. */
  now: SidesNow | null;
  /** The lines of a topic stand like this by now: counted at once, and with no more work than what changed needs. */
  tell(lines: readonly Line[]): void;
}

/**
 * The sides that a course's notes print to, while they are typed.
 * @param topicId the topic whose lines are told; the others stand as the deck has them
 */
export function useLiveCount({ course, topics, lines }: CourseNotes, topicId: string | null): LiveCount {
  const { paper, columns } = course;
  const ids = useMemo(() => [...new Set(lines.flatMap(({ pictureIds }) => pictureIds))], [lines]);
  const shown = usePictures(ids);
  const pictures = useMemo(
    () => new Map((shown ?? []).flatMap((one) => (one ? [[one.id, one] as const] : []))),
    [shown],
  );
  const [now, setNow] = useState<SidesNow | null>(null);
  const counter = useRef<SidesCounter | null>(null);
  const told = useRef<readonly Line[] | null>(null);
  const others = useSameRows(
    useMemo(() => lines.filter((line) => line.topicId !== topicId), [lines, topicId]),
  );
  const fresh = useRef({ topics, others, pictures });
  fresh.current = { topics, others, pictures };

  const read = useCallback((from: SidesCounter) => setNow({ sides: from.sides, byTopic: from.byTopic }), []);
  const countAll = useCallback(() => {
    const { topics, others, pictures } = fresh.current;
    if (!counter.current) return;
    counter.current.set(noteBlocks(topics, [...others, ...(told.current ?? [])], pictures));
    read(counter.current);
  }, [read]);
  useEffect(() => {
    const made: SidesCounter = new SidesCounter(document, { paper, columns }, () => read(made));
    counter.current = made;
    countAll();
    return () => {
      counter.current = null;
      made.close();
    };
  }, [paper, columns, read, countAll]);
  useEffect(countAll, [countAll, topics, others, pictures]);

  const tell = useCallback(
    (lines: readonly Line[]) => {
      const before = told.current;
      told.current = lines;
      if (!counter.current) return;
      const changed = before && onlyWords(before, lines);
      if (!changed) return countAll();
      for (const line of changed) counter.current.change(line.id, lineBlock(line));
      if (changed.length > 0) read(counter.current);
    },
    [countAll, read],
  );
  return { now, tell };
}

/** The lines whose words alone have changed; null where more has: which lines are printed, where, or with what. */
function onlyWords(before: readonly Line[], after: readonly Line[]): Line[] | null {
  if (before.length !== after.length) return null;
  const changed: Line[] = [];
  for (const [place, line] of after.entries()) {
    const old = before[place]!;
    if (old === line) continue;
    if (old.id !== line.id || !isPrinted(old) || !isPrinted(line)) return null;
    if (old.pictureIds.join() !== line.pictureIds.join()) return null;
    // A picture's block comes after its line's: without words, that one is not there.
    if ((old.lead === '' && old.rest === '') || (line.lead === '' && line.rest === '')) return null;
    if (line.depth !== old.depth && line.pictureIds.length > 0) return null;
    changed.push(line);
  }
  return changed;
}
