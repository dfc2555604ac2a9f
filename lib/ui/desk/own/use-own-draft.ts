import { useCallback, useEffect, useRef, useState } from 'preact/hooks';
import { readSettings } from '#lib/store/actions/courses.ts';
import { useDeck } from '../../deck/deck-context.tsx';
import { tell } from '../../text.ts';
import { type OwnDraft, type OwnPiece, emptyDraft, readDraft, savePictures, saveWords } from './own-draft.ts';

/** How long typing rests before the draft is saved, in milliseconds. */
const PAUSE = 250;

export interface OwnDraftState {
  /** Null until it is read. */
  draft: OwnDraft | null;
  change(next: (draft: OwnDraft) => OwnDraft): void;
  /** Begins afresh, after the notes were kept or thrown away. */
  clear(): void;
  /** What went wrong in saving the draft. */
  trouble: string | null;
}

/** The draft of a course's own notes: what was typed before is there, and what is typed now is saved as it goes. */
export function useOwnDraft(courseId: string): OwnDraftState {
  const db = useDeck();
  const [draft, setDraft] = useState<OwnDraft | null>(null);
  const [trouble, setTrouble] = useState<string | null>(null);
  const latest = useRef<OwnDraft | null>(null);
  const pause = useRef<ReturnType<typeof setTimeout>>(undefined);
  const isUnsaved = useRef(false);
  /** Pieces whose pictures are saved, or on their way. */
  const pictured = useRef<readonly OwnPiece[]>([]);
  const attempt = useCallback((work: () => void | Promise<void>) => {
    const failed = (error: unknown) => setTrouble(tell(error));
    try {
      void work()?.catch(failed);
    } catch (error) {
      failed(error);
    }
  }, []);
  const save = useCallback(() => {
    clearTimeout(pause.current);
    if (!isUnsaved.current || !latest.current) return;
    isUnsaved.current = false;
    const draft = latest.current;
    attempt(() => saveWords(courseId, draft));
  }, [attempt, courseId]);
  useEffect(() => {
    let gone = false;
    const begin = async () => {
      const [kept, settings] = await Promise.all([readDraft(courseId), readSettings(db)]);
      if (gone) return;
      latest.current = kept ?? emptyDraft(settings.aimedTopicId === null ? [] : [settings.aimedTopicId]);
      pictured.current = latest.current.pieces;
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
    addEventListener('pagehide', save, { signal: closing.signal });
    return () => {
      closing.abort();
      save();
    };
  }, [save]);
  const change = useCallback(
    (next: (draft: OwnDraft) => OwnDraft) => {
      if (!latest.current) return;
      latest.current = next(latest.current);
      isUnsaved.current = true;
      setDraft(latest.current);
      const before = pictured.current;
      pictured.current = latest.current.pieces;
      attempt(() => savePictures(before, pictured.current));
      clearTimeout(pause.current);
      pause.current = setTimeout(save, PAUSE);
    },
    [attempt, save],
  );
  const clear = useCallback(() => {
    change(() => emptyDraft());
    save();
  }, [change, save]);
  return { draft, change, clear, trouble };
}
