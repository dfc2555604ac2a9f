import { browser } from 'wxt/browser';
import { rememberTrouble } from '#lib/ui/trouble.ts';
import { onSitesChange, sitesGranted } from '#lib/ui/sites.ts';

const SCRIPT = 'rehighlight';

/** Puts the script that shows clips on exactly the sites that the student granted, now and whenever they change. */
export function keepSitesShown(signal: AbortSignal): void {
  // One after another: two changes at once must not end with the older one's list.
  let latest = Promise.resolve();
  const follow = () => {
    latest = latest.then(registerOnSites).catch(rememberTrouble);
  };
  onSitesChange(follow, signal);
  browser.runtime.onInstalled.addListener(follow);
  browser.runtime.onStartup.addListener(follow);
}

async function registerOnSites(): Promise<void> {
  const matches = await sitesGranted();
  const registered = await browser.scripting.getRegisteredContentScripts({ ids: [SCRIPT] });
  if (registered.length > 0) await browser.scripting.unregisterContentScripts({ ids: [SCRIPT] });
  if (matches.length === 0) return;
  await browser.scripting.registerContentScripts([
    { id: SCRIPT, js: ['rehighlight.js'], matches, runAt: 'document_idle', persistAcrossSessions: true },
  ]);
}
