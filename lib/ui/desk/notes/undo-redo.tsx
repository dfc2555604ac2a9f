import { useEffect, useRef, useState } from 'preact/hooks';
import { readSteps, turnStep } from '#lib/store/steps.ts';
import type { StepName } from '#lib/model/step.ts';
import { useDeck } from '../../deck/deck-context.tsx';
import { t, tell } from '../../text.ts';
import { useLive } from '../../use-live.ts';

const NAMES = {
  changeLine: () => t('stepChangeLine'),
  addLine: () => t('stepAddLine'),
  removeLine: () => t('stepRemoveLine'),
  moveLine: () => t('stepMoveLine'),
  leaveOut: () => t('stepLeaveOut'),
  takeIn: () => t('stepTakeIn'),
  splitLine: () => t('stepSplitLine'),
  joinLines: () => t('stepJoinLines'),
  changeQuestion: () => t('stepChangeQuestion'),
  addQuestion: () => t('stepAddQuestion'),
  changeOwnWords: () => t('stepChangeOwnWords'),
  markUnclear: () => t('stepMarkUnclear'),
  clearUnclear: () => t('stepClearUnclear'),
  tickStatements: () => t('stepTickStatements'),
  placePicture: () => t('stepPlacePicture'),
  addNotes: () => t('stepAddNotes'),
  moveTopic: () => t('stepMoveTopic'),
  addLesson: () => t('stepAddLesson'),
  changeLesson: () => t('stepChangeLesson'),
  delete: () => t('stepDelete'),
} as const satisfies Record<StepName, () => string>;

export interface Undoing {
  /** Undoes the latest step, or does the one again that was undone last. */
  turn(way: 'undo' | 'redo'): Promise<void>;
  undo: StepName | null;
  redo: StepName | null;
  /** What was done, or what went wrong. */
  said: string;
}

/**
 * Undo and redo over everything that can be undone, by whichever page it was done.
 * @param before what has to be on disk first, such as what is being typed
 */
export function useUndo(before: () => Promise<void>): Undoing {
  const db = useDeck();
  const [said, say] = useState('');
  const live = useLive(() => readSteps(db), ['steps'], 'steps');
  const turn = async (way: 'undo' | 'redo') => {
    try {
      await before();
      const next = (await readSteps(db))[way];
      const name = next && (await turnStep(db, next.key, way, Date.now()));
      if (name) say(t(way === 'undo' ? 'undoneStep' : 'redoneStep', NAMES[name]()));
      else say(t(way === 'undo' ? 'undoNone' : 'redoNone'));
    } catch (error) {
      say(tell(error));
    }
  };
  const latest = useRef(turn);
  latest.current = turn;
  useEffect(() => {
    const closing = new AbortController();
    addEventListener('keydown', (event) => onKey(event, latest.current), { signal: closing.signal });
    return () => closing.abort();
  }, []);
  const steps = live.state === 'ready' ? live.value : null;
  return { turn, undo: steps?.undo?.name ?? null, redo: steps?.redo?.name ?? null, said };
}

/** The keys that undo and redo everywhere. In a field they are the field's own. */
function onKey(event: KeyboardEvent, turn: Undoing['turn']): void {
  const key = event.key.toLowerCase();
  const isField = event.target instanceof Element && event.target.matches('input, textarea, select');
  if (isField || !(event.ctrlKey || event.metaKey) || event.altKey || (key !== 'z' && key !== 'y')) return;
  event.preventDefault();
  void turn(key === 'y' || event.shiftKey ? 'redo' : 'undo');
}

/** The buttons for it, and what the last one did. */
export function UndoRedo({ undoing }: { undoing: Undoing }) {
  const { turn, undo, redo, said } = undoing;
  return (
    <div class="row">
      <button disabled={!undo} onClick={() => void turn('undo')} title={undo ? NAMES[undo]() : ''}>
        {t('undo')}
      </button>
      <button disabled={!redo} onClick={() => void turn('redo')} title={redo ? NAMES[redo]() : ''}>
        {t('redo')}
      </button>
      <span class="soft" role="status">
        {said}
      </span>
    </div>
  );
}
