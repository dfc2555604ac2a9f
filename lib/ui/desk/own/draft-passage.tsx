import { useLayoutEffect, useRef } from 'preact/hooks';
import { pictureAt, picturePlaces } from '#lib/capture/pictures/places.ts';
import { cleanPassage } from '#lib/capture/sanitise.ts';
import type { PictureDraft } from '#lib/model/picture.ts';

interface DraftPassageProps {
  html: string;
  pictures: readonly (Pick<PictureDraft, 'dataUrl'> | null)[];
  label: string;
}

/** A passage that is not kept yet, as it will be, with its pictures from the draft. */
export function DraftPassage({ html, pictures, label }: DraftPassageProps) {
  const box = useRef<HTMLDivElement>(null);
  useLayoutEffect(() => {
    const passage = cleanPassage(html, document);
    for (const place of picturePlaces(passage)) {
      const picture = pictures[pictureAt(place)];
      if (picture) place.src = picture.dataUrl;
      else place.replaceWith(place.alt);
    }
    box.current!.replaceChildren(passage);
  }, [html, pictures]);
  // Long passages scroll, and what scrolls must be reachable by keyboard.
  return <div class="passage own-passage" ref={box} tabIndex={0} role="region" aria-label={label} />;
}
