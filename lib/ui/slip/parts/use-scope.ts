import { useRef, useState } from 'preact/hooks';
import type { SlipState } from '#lib/model/message.ts';
import type { Scope, Widened } from './widener.ts';

/** As a `Widener`, for what is selected. */
export type Widen = (
  scope: Scope,
  box: HTMLElement,
  changed: (widened: Widened) => void,
) => Promise<string | null>;

/** How much of the page is kept as the student widens it, and what the deck says of that. */
export function useScope(first: SlipState, widen: Widen | null | undefined) {
  const [widened, setWidened] = useState<Widened | null>(null);
  const [state, setState] = useState(first);
  const box = useRef<HTMLDivElement>(null);
  const changed = (now: Widened) => {
    setWidened(now);
    // Until the deck has answered nobody knows whether this passage was kept before.
    setState((before) => now.state ?? { ...before, kept: null });
  };
  /** Goes over to a scope, or back to the selection; gives what to tell the student where it cannot. */
  const goTo = async (to: Scope | null): Promise<string | null> => {
    const trouble = to && (await widen!(to, box.current!, changed));
    if (to) return trouble;
    box.current!.replaceChildren();
    setWidened(null);
    setState(first);
    return null;
  };
  return { widened, state, box, goTo };
}
