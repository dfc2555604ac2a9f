import { useEffect, useState } from 'preact/hooks';
import { StudentError } from '#lib/model/student-error.ts';
import { putBack } from '#lib/store/set-aside.ts';
import { useDeck } from '../deck/deck-context.tsx';
import { useAction } from '../deck/use-action.ts';
import { Trouble } from '../parts/trouble.tsx';
import { t } from '../text.ts';

interface Deleted {
  /** Of the row set aside. */
  key: number;
  name: string;
}

const feed = new EventTarget();

/** Shows the undo bar for what was just deleted. */
export function sayDeleted(deleted: Deleted): void {
  feed.dispatchEvent(new CustomEvent('deleted', { detail: deleted }));
}

/** Stands at the foot of the desk after a deletion, until it is undone, closed or followed by another. */
export function UndoBar() {
  const db = useDeck();
  const action = useAction();
  const [deleted, setDeleted] = useState<Deleted | null>(null);
  useEffect(() => {
    const closing = new AbortController();
    feed.addEventListener('deleted', (event) => setDeleted((event as CustomEvent<Deleted>).detail), {
      signal: closing.signal,
    });
    return () => closing.abort();
  }, []);
  const undo = async () => {
    const done = await action.run(async () => {
      if (!(await putBack(db, deleted!.key))) throw new StudentError('errorStillUnreadable');
    });
    if (done) setDeleted(null);
  };
  return (
    <div role="status" class="undo-holder">
      {deleted && (
        <div class="undo-bar row">
          <span class="wrap">{t('deletedNamed', deleted.name.slice(0, 80))}</span>
          <button onClick={() => void undo()}>{t('undo')}</button>
          <button class="plain" onClick={() => setDeleted(null)}>
            {t('close')}
          </button>
          <Trouble text={action.trouble} />
        </div>
      )}
    </div>
  );
}
