import type { BrowserContext } from 'playwright-core';

export interface WatchedRequest {
  url: string;
  /** The document or worker that asked. */
  from: string;
}

/**
 * Collects every request that pages, popups and the service worker make from now on. For requests of the
 * browser itself, run it through the logging proxy.
 */
export function watchTraffic(context: BrowserContext): WatchedRequest[] {
  const requests: WatchedRequest[] = [];
  context.on('request', (request) => {
    const worker = request.serviceWorker();
    const from = worker?.url() ?? (request.isNavigationRequest() ? 'navigation' : request.frame().url());
    requests.push({ url: request.url(), from });
  });
  return requests;
}
