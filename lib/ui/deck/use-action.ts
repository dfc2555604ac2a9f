import { useCallback, useState } from 'preact/hooks';
import { tell } from '../text.ts';

export interface Action {
  /** Runs an action of the student; gives whether it went well. What went wrong stands in `trouble`. */
  run(work: () => Promise<unknown>): Promise<boolean>;
  trouble: string | null;
  busy: boolean;
}

/** For buttons and forms that write to the deck: nothing fails in silence, nothing is sent twice. */
export function useAction(): Action {
  const [trouble, setTrouble] = useState<string | null>(null);
  const [busy, setBusy] = useState(false);
  const run = useCallback(async (work: () => Promise<unknown>) => {
    setBusy(true);
    setTrouble(null);
    try {
      await work();
      return true;
    } catch (error) {
      setTrouble(tell(error));
      return false;
    } finally {
      setBusy(false);
    }
  }, []);
  return { run, trouble, busy };
}
