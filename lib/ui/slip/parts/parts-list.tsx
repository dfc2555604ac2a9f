import { useLayoutEffect, useRef, useState } from 'preact/hooks';
import { picturePlaces } from '#lib/capture/pictures/places.ts';
import type { Part } from '#lib/capture/section/parts.ts';
import { t } from '../../text.ts';

/** How much of a part its tick box is named after. */
const NAME = 80;

interface PartsListProps {
  parts: readonly Part[];
  /** Told what is kept, to begin with and after each change. */
  changed(kept: Part[]): void;
}

/** The parts of a passage, each with a tick box: one stop for Tab, with the arrow keys going from part to part. */
export function PartsList({ parts, changed }: PartsListProps) {
  const list = useRef<HTMLDivElement>(null);
  const [dropped, setDropped] = useState<readonly Part[]>([]);
  const [at, setAt] = useState(0);
  const drop = (now: readonly Part[]) => {
    setDropped(now);
    changed(parts.filter((part) => !now.includes(part)));
  };
  // Once: the parts that are laid out do not change.
  // eslint-disable-next-line react-hooks/exhaustive-deps
  useLayoutEffect(() => drop(dropped), []);
  useLayoutEffect(() => list.current!.querySelector('input')!.focus(), []);
  const move = (event: KeyboardEvent) => {
    const step = { ArrowDown: 1, ArrowUp: -1 }[event.key];
    if (!step) return;
    event.preventDefault();
    list.current!.querySelectorAll('input')[at + step]?.focus();
  };
  return (
    <>
      <div class="preview parts" ref={list} role="group" aria-label={t('slipParts')} onKeyDown={move}>
        {parts.map((part, index) => (
          <div class={dropped.includes(part) ? 'check dropped' : 'check'} key={index}>
            <input
              type="checkbox"
              checked={!dropped.includes(part)}
              aria-label={part.text.slice(0, NAME) || t('slipPartPicture', '')}
              tabIndex={index === at ? 0 : -1}
              onFocus={() => setAt(index)}
              onChange={() => drop(toggled(dropped, part))}
            />
            <Nodes nodes={part.nodes} />
          </div>
        ))}
      </div>
      <p class="soft">{t('slipPartsHint')}</p>
    </>
  );
}

function toggled(parts: readonly Part[], part: Part): Part[] {
  return parts.includes(part) ? parts.filter((other) => other !== part) : [...parts, part];
}

function Nodes({ nodes }: { nodes: DocumentFragment }) {
  const box = useRef<HTMLDivElement>(null);
  useLayoutEffect(() => {
    const shown = nodes.cloneNode(true) as DocumentFragment;
    // The pictures themselves are read when the passage is kept.
    for (const place of picturePlaces(shown)) place.replaceWith(t('slipPartPicture', place.alt));
    box.current!.replaceChildren(shown);
  }, [nodes]);
  return <div class="passage" ref={box} />;
}
