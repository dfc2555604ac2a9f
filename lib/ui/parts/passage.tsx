import { useLayoutEffect, useRef } from 'preact/hooks';
import { cleanPassage } from '#lib/capture/sanitise.ts';

/** A kept passage with its structure. It is cleaned again here, whatever the deck holds. */
export function Passage({ html, label }: { html: string; label: string }) {
  const box = useRef<HTMLDivElement>(null);
  useLayoutEffect(() => {
    box.current!.replaceChildren(cleanPassage(html, document));
  }, [html]);
  // Long passages scroll, and what scrolls must be reachable by keyboard.
  return <div class="passage" ref={box} tabIndex={0} role="region" aria-label={label} />;
}
