import { send } from '../../send.ts';
import type { Widen } from './use-scope.ts';
import { type Selected, WIDENER_KEY, type Widener } from './widener.ts';

/** Widens with a widener that is brought into the page when it is first needed. */
export function bringWidener(selected: Selected): Widen {
  const world = globalThis as { [WIDENER_KEY]?: Widener };
  return async (...how) => {
    if (!world[WIDENER_KEY]) await send('addReader', {});
    return world[WIDENER_KEY]!(selected, ...how);
  };
}
