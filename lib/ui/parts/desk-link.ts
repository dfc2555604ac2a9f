import { browser } from 'wxt/browser';

/** The address of a page of the desk, for links from elsewhere in the extension. */
export const deskLink = (path: string): string =>
  browser.runtime.getURL(`/desk.html#/${path}` as '/desk.html');
