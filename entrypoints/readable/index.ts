import { defineUnlistedScript } from 'wxt/utils/define-unlisted-script';
import { showParts } from '#lib/ui/slip/parts/show-parts.tsx';
import { WIDENER_KEY } from '#lib/ui/slip/parts/widener.ts';

/** Put into a page when the student asks for more than was selected: it leaves the widener for the slip to use. */
export default defineUnlistedScript(() => {
  Object.assign(globalThis, { [WIDENER_KEY]: showParts });
});
