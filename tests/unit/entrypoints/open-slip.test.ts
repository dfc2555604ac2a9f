import { beforeEach, expect, test, vi } from 'vitest';
import { fakeBrowser } from 'wxt/testing/fake-browser';
import { takeTrouble } from '#lib/ui/trouble.ts';
import { openSlip, openSlipOrSay } from '../../../entrypoints/background/open-slip.ts';
import { fakeExtension } from '../ui/fake-extension.ts';

beforeEach(() => {
  vi.restoreAllMocks();
  fakeExtension();
});

/** The browser puts scripts into a tab: `refusals` times it does not. */
function scripting(refusals = 0, refuse: () => unknown = () => Promise.reject(new Error('Cannot access'))) {
  let left = refusals;
  return vi
    .spyOn(fakeBrowser.scripting, 'executeScript')
    .mockImplementation((() => (left-- > 0 ? refuse() : Promise.resolve([{ frameId: 0 }]))) as never);
}
const files = (put: ReturnType<typeof scripting>) =>
  put.mock.calls.map(([script]) => script).filter((script) => 'files' in script);
const popup = (opens: boolean) =>
  vi.spyOn(fakeBrowser.action, 'openPopup').mockImplementation((async () => {
    if (!opens) throw new Error('Could not find an active browser window.');
  }) as never);
const desks = async () =>
  (await fakeBrowser.tabs.query({})).filter(({ url }) => url?.includes('/desk.html')).length;

test('the clip script is put into the tab that was asked for', async () => {
  const put = scripting();
  await openSlip(7, 'selection');
  expect(files(put)).toEqual([{ target: { tabId: 7 }, files: ['/clip.js'] }]);
});

test('a tab that is granted a little late is tried again', async () => {
  const put = scripting(3);
  await openSlip(7, 'selection');
  expect(files(put).length).toBeGreaterThan(0);
});

test.each([
  ['with an error', () => Promise.reject(new Error('Cannot access a chrome:// URL'))],
  ['with an empty answer', () => Promise.resolve([])],
])('a page that lets no extension in, told %s, is said to be one', async (_how, refuse) => {
  const put = scripting(Infinity, refuse);
  await expect(openSlip(7, 'selection')).rejects.toMatchObject({ message: 'errorPageClosed' });
  expect(put.mock.calls.length).toBeLessThan(50);
});

test('where it works, nothing else is opened', async () => {
  scripting();
  const opened = popup(true);
  await openSlipOrSay(7);
  expect(opened).not.toHaveBeenCalled();
  expect(await takeTrouble()).toBeNull();
});

test('where it does not, the popup opens and finds what to say', async () => {
  scripting(Infinity);
  const opened = popup(true);
  await openSlipOrSay(7);
  expect(opened).toHaveBeenCalledTimes(1);
  expect(await takeTrouble()).toMatch(/^The browser lets no extension read this page/);
  expect(await desks()).toBe(0);
});

test('where the popup may not open by itself, the desk does', async () => {
  popup(false);
  await openSlipOrSay(undefined);
  expect(await desks()).toBe(1);
  expect(await takeTrouble()).toMatch(/^The browser lets no extension read this page/);
});
