import { defineUnlistedScript } from 'wxt/utils/define-unlisted-script';
import { showClips } from '#lib/ui/rehighlight/show-clips.ts';

/** Runs on the sites alone that the student granted, and shows there what was kept from the page. */
export default defineUnlistedScript(() => {
  const leaving = new AbortController();
  addEventListener('pagehide', () => leaving.abort(), { once: true });
  // Without the extension behind it (just updated), or without an address to keep, there is nothing to show.
  showClips(document, leaving.signal).catch(() => leaving.abort());
});
