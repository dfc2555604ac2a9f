import { defineUnlistedScript } from 'wxt/utils/define-unlisted-script';
import { readProvenance } from '#lib/capture/page/provenance.ts';

/** Put into the page while a clip from it is kept: who wrote it, when, and on what terms. */
export default defineUnlistedScript(() => readProvenance(document));
