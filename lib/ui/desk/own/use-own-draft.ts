import { useCallback, useEffect, useRef, useState } from 'preact/hooks';
import { readSettings } from '#lib/store/actions/courses.ts';
import { useDeck } from '../../deck/deck-context.tsx';
import { tell } from '../../text.ts';
import { type OwnDraft, emptyDraft, readDraft, saveDraft } from './own-draft.ts';

/** How long typing rests before the draft is saved, in milliseconds. */
const PAUSE = 250;

export interface OwnDraftState {
  /** Null until it is read. */
  draft: OwnDraft | null;
  change(next: (draft: OwnDraft) => OwnDraft): void;
  /** Begins afresh, after the notes were kept or thrown away. */
  clear(): Promise<void>;
  /** What went wrong in saving the draft. */
  trouble: string | null;
}

/** The draft of a course's own notes: what was typed before is there, and what is typed now is saved as it goes. */
export function useOwnDraft(courseId: string): OwnDraftState {
  const db = useDeck();
  const [draft, setDraft] = useState<OwnDraft | null>(null);
  const [trouble, setTrouble] = useState<string | null>(null);
  const latest = useRef<OwnDraft | null>(null);
  const isUnsaved = useRef(false);
  const pause = useRef<ReturnType<typeof setTimeout>>(undefined);
  const save = useCallback(async () => {
    clearTimeout(pause.current);
    if (!isUnsaved.current || !latest.current) return;
    isUnsaved.current = false;
    try {
      await saveDraft(courseId, latest.current);
    } catch (error) {
      isUnsaved.current = true;
      setTrouble(tell(error));
    }
  }, [courseId]);
  useEffect(() => {
    let gone = false;
    const begin = async () => {
      const [kept, settings] = await Promise.all([readDraft(courseId), readSettings(db)]);
      if (gone) return;
      latest.current = kept ?? emptyDraft(settings.aimedTopicId === null ? [] : [settings.aimedTopicId]);
      setDraft(latest.current);
    };
    begin().catch((error: unknown) => {
      latest.current = emptyDraft();
      setDraft(latest.current);
      setTrouble(tell(error));
    });
    return () => {
      gone = true;
    };
  }, [courseId, db]);
  // What stands there when the page is left is saved as well.
  useEffect(() => {
    const closing = new AbortController();
    addEventListener('pagehide', () => void save(), { signal: closing.signal });
    return () => {
      closing.abort();
      void save();
    };
  }, [save]);
  const change = useCallback(
    (next: (draft: OwnDraft) => OwnDraft) => {
      if (!latest.current) return;
      latest.current = next(latest.current);
      isUnsaved.current = true;
      setDraft(latest.current);
      clearTimeout(pause.current);
      pause.current = setTimeout(() => void save(), PAUSE);
    },
    [save],
  );
  const clear = useCallback(async () => {
    latest.current = emptyDraft();
    setDraft(latest.current);
    isUnsaved.current = true;
    await save();
  }, [save]);
  return { draft, change, clear, trouble };
}
