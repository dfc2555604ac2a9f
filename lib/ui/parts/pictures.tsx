import { useEffect, useState } from 'preact/hooks';
import { readOne } from '#lib/store/read.ts';
import type { Picture } from '#lib/model/picture.ts';
import { useDeck } from '../deck/deck-context.tsx';
import { t } from '../text.ts';

/** A picture with an address that this page may show; null for one that the deck no longer has. */
export type ShownPicture = (Picture & { address: string }) | null;

/** The pictures with these ids, in their order; null until they are read. Their addresses last as long as the screen. */
export function usePictures(ids: readonly string[]): ShownPicture[] | null {
  const db = useDeck();
  const [pictures, setPictures] = useState<ShownPicture[] | null>(null);
  const key = ids.join();
  useEffect(() => {
    let made: ShownPicture[] = [];
    let gone = false;
    const release = () => made.forEach((one) => one && URL.revokeObjectURL(one.address));
    const read = async () => {
      const rows = await Promise.all(
        key
          .split(',')
          .filter(Boolean)
          .map((id) => readOne(db, 'pictures', id)),
      );
      if (gone) return;
      made = rows.map((row) => (row ? { ...row, address: URL.createObjectURL(row.bytes) } : null));
      setPictures(made);
    };
    // A deck that cannot be read says so elsewhere; here the words alone are shown.
    read().catch(() => setPictures([]));
    return () => {
      gone = true;
      release();
      setPictures(null);
    };
  }, [db, key]);
  return pictures;
}

/** Pictures of a clip, one under the other, each with its alternative text. */
export function Pictures({ ids }: { ids: readonly string[] }) {
  const pictures = usePictures(ids);
  return (
    <div class="pictures" role="group" aria-label={t('picturesOf')}>
      {pictures?.map((picture, place) =>
        picture ? (
          <img
            key={picture.id}
            src={picture.address}
            alt={picture.alt}
            width={picture.width}
            height={picture.height}
          />
        ) : (
          <p key={ids[place]} class="soft">
            {t('pictureGone')}
          </p>
        ),
      )}
    </div>
  );
}
