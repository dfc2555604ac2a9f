import { browser } from 'wxt/browser';
import type { MessageData, MessageName, Replies, Reply } from '#lib/model/message.ts';
import { type ErrorName, StudentError } from '#lib/model/student-error.ts';

/**
 * Sends a message to the background and gives its answer.
 * Errors: the StudentError that the background met, or `errorReloadPage` when the extension behind this page is gone
 * (updated or switched off while the page was open).
 */
export async function send<N extends MessageName>(name: N, data: MessageData<N>): Promise<Replies[N]> {
  let reply: Reply<N> | undefined;
  try {
    reply = await browser.runtime.sendMessage({ name, data });
  } catch {
    throw new StudentError('errorReloadPage');
  }
  if (!reply) throw new StudentError('errorReloadPage');
  if (!reply.ok) throw new StudentError(reply.error as ErrorName, ...reply.values);
  return reply.value;
}
