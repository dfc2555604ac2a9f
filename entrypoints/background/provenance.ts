import { browser, type Browser } from 'wxt/browser';
import { Source } from '#lib/model/source.ts';

const Provenance = Source.pick({ author: true, published: true, licence: true }).partial();

/**
 * What the page that a message came from says of its author, day and licence. Nothing where it cannot be asked any more
 * (closed meanwhile): the clip is worth keeping without it.
 */
export async function provenanceOf({
  tab,
  frameId = 0,
}: Browser.runtime.MessageSender): Promise<Partial<Source>> {
  if (tab?.id === undefined) return {};
  const target = { tabId: tab.id, frameIds: [frameId] };
  const answers = await browser.scripting
    .executeScript({ target, files: ['/provenance.js'] })
    .catch(() => []);
  const stated = Provenance.safeParse(answers[0]?.result);
  return stated.success ? (stated.data as Partial<Source>) : {};
}
