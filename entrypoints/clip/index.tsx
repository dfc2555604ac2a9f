import { defineUnlistedScript } from 'wxt/utils/define-unlisted-script';
import { openSlip } from '#lib/ui/slip/open-slip.tsx';

/** Put into the page on the student's word only; each time it runs, it opens the slip on the selection. */
export default defineUnlistedScript(() => openSlip(document));
