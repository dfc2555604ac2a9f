import type { Judgement } from '#lib/model/attempt.ts';

/** Drawn in a square of 20. */
export const MARK_PATHS: Record<Judgement, string> = {
  full: 'M3 11.5 8 17 18 3.5',
  part: 'M3 11.5 8 17 18 3.5 M11.5 6.5 17.5 13.5',
  none: 'M4 4 16.5 16.5 M16 3.5 4.5 17',
};

/** An examiner's mark in red pen: a tick, a tick struck through, a cross. The words stand beside it. */
export function Mark({ judgement }: { judgement: Judgement }) {
  return (
    <svg class={`mark mark-${judgement}`} viewBox="0 0 20 20" width="18" height="18" aria-hidden="true">
      <path d={MARK_PATHS[judgement]} />
    </svg>
  );
}
