import { defineUnlistedScript } from 'wxt/utils/define-unlisted-script';
import { followPage } from '#lib/ui/rehighlight/show-clips.ts';

/** Runs on the sites alone that the student granted, and shows there what was kept from the page. */
export default defineUnlistedScript(() => followPage(document));
