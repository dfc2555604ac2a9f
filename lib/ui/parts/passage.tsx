import { type Ref } from 'preact';
import { useLayoutEffect, useRef } from 'preact/hooks';
import { pictureAt, picturePlaces } from '#lib/capture/pictures/places.ts';
import { cleanPassage } from '#lib/capture/sanitise.ts';
import { Pictures, usePictures } from './pictures.tsx';

interface PassageProps {
  html: string;
  label: string;
  /** The clip's pictures. Those without a place in the markup follow it. */
  pictureIds?: readonly string[];
}

/** A kept passage with its structure and its pictures. It is cleaned again here, whatever the deck holds. */
export function Passage({ html, label, pictureIds = [] }: PassageProps) {
  const box = useRef<HTMLDivElement>(null);
  useLayoutEffect(() => {
    box.current!.replaceChildren(cleanPassage(html, document));
  }, [html]);
  const placed = new Set([...html.matchAll(/<img data-picture="(\d+)"/g)].map((match) => Number(match[1])));
  const loose = pictureIds.filter((_, number) => !placed.has(number));
  return (
    <>
      {/* Long passages scroll, and what scrolls must be reachable by keyboard. */}
      <div class="passage" ref={box} tabIndex={0} role="region" aria-label={label} />
      {placed.size > 0 && <Filling box={box} html={html} ids={pictureIds} />}
      {loose.length > 0 && <Pictures ids={loose} />}
    </>
  );
}

/** Puts the pictures into their places. */
function Filling({ box, html, ids }: { box: Ref<HTMLDivElement>; html: string; ids: readonly string[] }) {
  const pictures = usePictures(ids);
  useLayoutEffect(() => {
    for (const place of picturePlaces((box as { current: HTMLDivElement }).current)) {
      const picture = pictures?.[pictureAt(place)];
      if (!picture) {
        place.removeAttribute('src');
        continue;
      }
      place.alt = picture.alt;
      place.src = picture.address;
    }
  }, [box, html, pictures]);
  return null;
}
