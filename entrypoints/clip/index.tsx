import { defineUnlistedScript } from 'wxt/utils/define-unlisted-script';
import { WISH_KEY, type Wish } from '#lib/model/wish.ts';
import { openSlip } from '#lib/ui/slip/open-slip.tsx';

/** Put into the page on the student's word only; each time it runs, it opens the slip on what was wished for. */
export default defineUnlistedScript(() => {
  const world = globalThis as { [WISH_KEY]?: Wish };
  return openSlip(document, world[WISH_KEY] ?? 'selection');
});
