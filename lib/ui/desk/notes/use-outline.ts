import { useEffect, useLayoutEffect, useMemo, useState } from 'preact/hooks';
import type { Line } from '#lib/model/item.ts';
import { StudentError } from '#lib/model/student-error.ts';
import { type LineEdit, editLines } from '#lib/store/actions/lines.ts';
import type { Db } from '#lib/store/schema.ts';
import { useDeck } from '../../deck/deck-context.tsx';
import { OutlineEditor } from './outline-editor.ts';

/**
 * The editor of a topic's lines, shown again after each change.
 * @param rows the topic's lines as the deck has them, in their order
 * @param changed called with the lines as they stand now, typing included
 */
export function useOutline(
  { courseId, topicId }: { courseId: string; topicId: string },
  rows: readonly Line[],
  changed: (lines: readonly Line[]) => void,
): OutlineEditor {
  const db = useDeck();
  const [, show] = useState(0);
  const editor = useMemo(() => {
    const made: OutlineEditor = new OutlineEditor({
      courseId,
      topicId,
      save: (edit) => save(db, edit, () => made.lines),
      newId: () => crypto.randomUUID(),
      changed: () => {
        changed(made.lines);
        show((count) => count + 1);
      },
    });
    return made;
    // eslint-disable-next-line react-hooks/exhaustive-deps -- `changed` is the page's own and stays the same
  }, [db, courseId, topicId]);
  useLayoutEffect(() => {
    editor.adopt(rows);
  }, [editor, rows]);
  // What stands in a field when the page is left is written as well.
  useEffect(() => {
    const closing = new AbortController();
    addEventListener('pagehide', () => void editor.flush(), { signal: closing.signal });
    return () => {
      closing.abort();
      void editor.flush();
    };
  }, [editor]);
  return editor;
}

/** Writes an action. A line that was deleted elsewhere while it was being changed here comes back: its words are not lost. */
async function save(db: Db, edit: LineEdit, lines: () => readonly Line[]): Promise<void> {
  try {
    await editLines(db, edit, Date.now());
  } catch (error) {
    if (!(error instanceof StudentError && error.message === 'errorItemGone')) throw error;
    const keys = new Set(await db.getAllKeys('lines'));
    const change = (edit.change ?? []).filter(({ id }) => keys.has(id));
    const back = lines().filter(({ id }) => edit.change?.some((one) => one.id === id) && !keys.has(id));
    await editLines(db, { ...edit, change, add: [...(edit.add ?? []), ...back] }, Date.now());
  }
}
