import { vi } from 'vitest';
import { fakeBrowser } from 'wxt/testing/fake-browser';
import messages from '#assets/public/_locales/en/messages.json' with { type: 'json' };

/** A message with its values put in, as the browser does it: '' for a name that is not there. */
function getMessage(name: string, values: string[] = []): string {
  const text = (messages as Record<string, { message: string }>)[name]?.message ?? '';
  return text.replace(/\$(\d)/g, (_, place: string) => values[Number(place) - 1] ?? '');
}

/** Puts the parts of the extension API that the fake browser lacks in place, and empties the rest. */
export function fakeExtension({ shortcut = 'Alt+K', granted = [] as string[] } = {}): void {
  fakeBrowser.reset();
  vi.spyOn(fakeBrowser.i18n, 'getMessage').mockImplementation(getMessage as never);
  vi.spyOn(fakeBrowser.i18n, 'getUILanguage').mockReturnValue('en');
  vi.spyOn(fakeBrowser.commands, 'getAll').mockImplementation(
    async () => [{ name: 'clip', description: '', shortcut }] as never,
  );
  fakeSites(granted);
}

/** The sites that were granted: asking for one grants it. */
function fakeSites(granted: string[]): void {
  const { permissions } = fakeBrowser;
  const told = { onAdded: new Set<() => void>(), onRemoved: new Set<() => void>() };
  for (const event of ['onAdded', 'onRemoved'] as const) {
    vi.spyOn(permissions[event], 'addListener').mockImplementation(((hear: () => void) =>
      told[event].add(hear)) as never);
    vi.spyOn(permissions[event], 'removeListener').mockImplementation(((hear: () => void) =>
      told[event].delete(hear)) as never);
  }
  let origins = granted;
  const change = (event: keyof typeof told, next: string[]) => {
    origins = next;
    for (const hear of told[event]) hear();
    return true;
  };
  vi.spyOn(permissions, 'getAll').mockImplementation((async () => ({ origins })) as never);
  vi.spyOn(permissions, 'request').mockImplementation((async (asked: { origins: string[] }) =>
    change('onAdded', [...origins, ...asked.origins])) as never);
  vi.spyOn(permissions, 'remove').mockImplementation((async (asked: { origins: string[] }) =>
    change(
      'onRemoved',
      origins.filter((origin) => !asked.origins.includes(origin)),
    )) as never);
}

/** Lets the background answer every message with `reply`; gives the messages that came in. */
export function answerWith(reply: (message: { name: string; data: unknown }) => unknown): unknown[] {
  const came: unknown[] = [];
  fakeBrowser.runtime.onMessage.addListener((message, _sender, respond) => {
    came.push(message);
    respond(reply(message));
    return true;
  });
  return came;
}
