import { browser } from 'wxt/browser';

/** A site as the browser's permissions name it: its origin with everything below. Null for what is not on the web. */
export function siteOf(url: string): string | null {
  if (!URL.canParse(url)) return null;
  const { protocol, hostname } = new URL(url);
  // Patterns of permissions know no ports.
  return /^https?:$/.test(protocol) ? `${protocol}//${hostname}/*` : null;
}

/** The sites on which the student lets clips always be shown, in order. */
export async function sitesGranted(): Promise<string[]> {
  const { origins = [] } = await browser.permissions.getAll();
  return origins.toSorted();
}

/** Asks the student, through the browser, for a site. Only within a click. Gives whether it was granted. */
export const askForSite = (site: string): Promise<boolean> =>
  browser.permissions.request({ origins: [site] });

/** Gives a site back. */
export const giveUpSite = (site: string): Promise<boolean> => browser.permissions.remove({ origins: [site] });

/** Calls `listener` when a site was granted or given up, until `signal` aborts. */
export function onSitesChange(listener: () => void, signal: AbortSignal): void {
  const { onAdded, onRemoved } = browser.permissions;
  onAdded.addListener(listener);
  onRemoved.addListener(listener);
  signal.addEventListener('abort', () => {
    onAdded.removeListener(listener);
    onRemoved.removeListener(listener);
  });
}
