import type { Browser } from 'wxt/browser';
import { browser } from 'wxt/browser';
import {
  type CheckedData,
  FROM_PAGES,
  MESSAGES,
  type MessageName,
  type Replies,
  type Reply,
} from '#lib/model/message.ts';
import { StudentError } from '#lib/model/student-error.ts';

/** One handler for each message: a name without one does not compile. */
export type Handlers = {
  [N in MessageName]: (data: CheckedData<N>, sender: Browser.runtime.MessageSender) => Promise<Replies[N]>;
};

const isName = (name: unknown): name is MessageName =>
  typeof name === 'string' && Object.hasOwn(MESSAGES, name);

/** A page of the extension itself (popup, desk), as opposed to a content script in a web page. */
function isOwnPage(sender: Browser.runtime.MessageSender): boolean {
  return sender.url?.startsWith(browser.runtime.getURL('/')) ?? false;
}

/**
 * Answers one message: its sender and its data are checked before a handler sees them.
 * Gives undefined for what is not a message of ours.
 */
export async function answer(
  handlers: Handlers,
  message: unknown,
  sender: Browser.runtime.MessageSender,
): Promise<Reply<MessageName> | undefined> {
  if (sender.id !== browser.runtime.id || typeof message !== 'object' || message === null) return undefined;
  const { name, data } = message as { name?: unknown; data?: unknown };
  if (!isName(name)) return undefined;
  if (!isOwnPage(sender) && !(FROM_PAGES.includes(name) && sender.tab)) return undefined;
  try {
    return { ok: true, value: await handle(handlers, name, data, sender) };
  } catch (error) {
    if (error instanceof StudentError) return { ok: false, error: error.message, values: error.values };
    return {
      ok: false,
      error: 'errorUnexpected',
      values: [error instanceof Error ? error.message : String(error)],
    };
  }
}

async function handle<N extends MessageName>(
  handlers: Handlers,
  name: N,
  data: unknown,
  sender: Browser.runtime.MessageSender,
): Promise<Replies[N]> {
  const checked = MESSAGES[name].safeParse(data);
  if (!checked.success) {
    const issue = checked.error.issues[0]!;
    throw new StudentError('errorFieldWrong', issue.path.join('.'), issue.message);
  }
  return handlers[name](checked.data as CheckedData<N>, sender);
}
