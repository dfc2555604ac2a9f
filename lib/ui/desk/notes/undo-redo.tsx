import { useState } from 'preact/hooks';
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
  const steps = live.state === 'ready' ? live.value : null;
  return { turn, undo: steps?.undo?.name ?? null, redo: steps?.redo?.name ?? null, said };
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
