import { type Deletable, deleteRow } from '#lib/store/set-aside.ts';
import { useDeck } from '../deck/deck-context.tsx';
import { useAction } from '../deck/use-action.ts';
import { Trouble } from '../parts/trouble.tsx';
import { t } from '../text.ts';
import { sayDeleted } from './undo-bar.tsx';

interface DeleteButtonProps {
  store: Deletable;
  id: string;
  /** What the student knows it by. */
  name: string;
  then?: () => void;
}

/** Deletes at once; the undo bar and the set-aside page bring it back. */
export function DeleteButton({ store, id, name, then }: DeleteButtonProps) {
  const db = useDeck();
  const action = useAction();
  const remove = async () => {
    const done = await action.run(async () => {
      const key = await deleteRow(db, store, id, Date.now());
      if (key !== undefined) sayDeleted({ key, name });
    });
    if (done) then?.();
  };
  return (
    <>
      <button
        class="plain"
        disabled={action.busy}
        onClick={() => void remove()}
        aria-label={t('deleteNamed', name)}
      >
        {t('delete')}
      </button>
      <Trouble text={action.trouble} />
    </>
  );
}
