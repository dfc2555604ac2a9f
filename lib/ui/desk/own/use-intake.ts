import { useCallback, useState } from 'preact/hooks';
import { t, tell } from '../../text.ts';
import type { OwnPiece } from './own-draft.ts';
import { endTyped, imagesIn, insertInto, pastedPiece, richIn, sheetPiece } from './take-in.ts';
import type { OwnDraftState } from './use-own-draft.ts';

/** Takes in what is pasted, dropped or chosen; what cannot be taken says why, and the rest stays as it is. */
export function useIntake(change: OwnDraftState['change']) {
  const [trouble, setTrouble] = useState<string | null>(null);
  const [lost, setLost] = useState(0);
  const forget = useCallback(() => {
    setTrouble(null);
    setLost(0);
  }, []);
  const add = useCallback(
    (files: readonly File[]) => {
      forget();
      void (async () => {
        for (const file of files) {
          try {
            const sheet = await sheetPiece(file);
            change((draft) => ({ ...draft, pieces: withSheet(draft.pieces, sheet) }));
          } catch (error) {
            setTrouble(t('ownNotTaken', file.name, tell(error)));
          }
        }
      })();
    },
    [change, forget],
  );
  const dropped = useCallback((file: File) => add([file]), [add]);
  const pasted = (event: ClipboardEvent, { id }: OwnPiece, field: HTMLTextAreaElement) => {
    const clipboard = event.clipboardData;
    if (!clipboard) return;
    const rich = richIn(clipboard);
    const images = imagesIn(clipboard);
    // A picture that is copied in a browser comes with markup that only names its address.
    const isPicture =
      images.length > 0 && (rich === null || rich.pictures.length + rich.lost <= images.length);
    if (!isPicture && !rich) return;
    event.preventDefault();
    if (isPicture) return add(images);
    forget();
    const range = { from: field.selectionStart, to: field.selectionEnd };
    void pastedPiece(rich!).then((made) => {
      setLost(made.lost);
      change((draft) => ({ ...draft, pieces: insertInto(draft.pieces, id, range, [made.piece]) }));
    });
  };
  return { trouble, lost, add, dropped, pasted, forget };
}

/** A sheet goes below what is there, above an empty field to type in. */
function withSheet(pieces: OwnPiece[], sheet: OwnPiece): OwnPiece[] {
  const last = pieces.at(-1);
  const isFree = last?.kind === 'typed' && last.text.trim() === '';
  return isFree ? [...pieces.slice(0, -1), sheet, last] : endTyped([...pieces, sheet]);
}
