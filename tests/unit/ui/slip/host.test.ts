// @vitest-environment jsdom
import { afterEach, beforeEach, expect, test, vi } from 'vitest';
import { raiseHost } from '#lib/ui/slip/host.ts';
import { fakeExtension } from '../fake-extension.ts';

class WatchStub {
  static watching = new Set<WatchStub>();
  observe = () => void WatchStub.watching.add(this);
  disconnect = () => void WatchStub.watching.delete(this);
}
class SheetStub {
  replaceSync = () => undefined;
}

beforeEach(() => {
  fakeExtension();
  WatchStub.watching.clear();
  vi.stubGlobal('ResizeObserver', WatchStub);
  vi.stubGlobal('CSSStyleSheet', SheetStub);
  document.body.innerHTML = '<button id="before">Read on</button>';
  document.getElementById('before')!.focus();
});
afterEach(() => {
  for (const host of hosts()) host.remove();
  vi.unstubAllGlobals();
});

const hosts = () => [...document.querySelectorAll('plumbline-slip')];

/** A raised slip with a field and a button in it. */
function raise() {
  const host = raiseHost(document);
  const [field, button] = [document.createElement('textarea'), document.createElement('button')];
  host.sheet.append(field, button);
  return { ...host, field, button };
}

test('the page sees an element and nothing inside it', () => {
  const { sheet } = raise();
  expect(hosts()).toHaveLength(1);
  expect(hosts()[0]!.shadowRoot).toBeNull();
  expect(document.querySelector('.sheet, [role=dialog]')).toBeNull();
  expect([sheet.getAttribute('role'), sheet.getAttribute('aria-label')]).toEqual(['dialog', 'Plumbline']);
});

test.each(['click', 'keydown', 'keyup', 'keypress', 'input', 'change', 'submit', 'beforeinput', 'paste'])(
  'a %s that a script made reaches nothing on the slip',
  (kind) => {
    const { button } = raise();
    const heard = vi.fn();
    button.addEventListener(kind, heard);
    button.dispatchEvent(new Event(kind, { bubbles: true, composed: true, cancelable: true }));
    expect(heard).not.toHaveBeenCalled();
  },
);

test('an event that acts on nothing comes through: the guard is what stops the others', () => {
  const { button } = raise();
  const heard = vi.fn();
  button.addEventListener('pointermove', heard);
  button.dispatchEvent(new Event('pointermove', { bubbles: true }));
  expect(heard).toHaveBeenCalledTimes(1);
});

test('the page does not overhear what a script did there, either', () => {
  const { button } = raise();
  const heard = vi.fn();
  document.addEventListener('click', heard);
  button.dispatchEvent(new Event('click', { bubbles: true, composed: true }));
  document.removeEventListener('click', heard);
  expect(heard).not.toHaveBeenCalled();
});

test('an event that the browser made reaches the slip', () => {
  const { sheet } = raise();
  const form = document.createElement('form');
  sheet.append(form);
  const heard = vi.fn((event: Event) => event.preventDefault());
  form.addEventListener('submit', heard);
  form.requestSubmit();
  expect(heard).toHaveBeenCalledWith(expect.objectContaining({ isTrusted: true }));
});

test('leaving takes it away, gives the focus back and watches nothing any more', () => {
  const { field, leave } = raise();
  field.focus();
  expect(document.activeElement).toBe(hosts()[0]);
  expect(WatchStub.watching.size).toBe(1);
  leave();
  expect(hosts()).toEqual([]);
  expect(document.activeElement?.id).toBe('before');
  expect(WatchStub.watching.size).toBe(0);
});

test('a later slip takes the place of the one before', () => {
  const first = raise();
  const second = raise();
  expect(hosts()).toHaveLength(1);
  expect(first.sheet.isConnected).toBe(false);
  expect(second.sheet.isConnected).toBe(true);
});

test('it stands beside the passage, and goes with it when the window changes', () => {
  const { beside, place, sheet } = raise();
  const box = { left: 40, top: 60, right: 240, bottom: 80 };
  beside(() => box);
  place();
  expect([sheet.style.left, sheet.style.top]).toEqual(['252px', '60px']);
  box.top = 300;
  dispatchEvent(new Event('resize'));
  expect(sheet.style.top).toBe('300px');
});

test('once it has left it does not move any more', () => {
  const { beside, leave, sheet } = raise();
  beside(() => ({ left: 40, top: 60, right: 240, bottom: 80 }));
  leave();
  dispatchEvent(new Event('resize'));
  expect(sheet.style.left).toBe('');
});

test('a page that sweeps it away gets it back, with the focus where it was, until it has done so twenty times', async () => {
  const { field } = raise();
  const host = hosts()[0]!;
  field.focus();
  document.body.replaceChildren();
  for (let sweeps = 0; sweeps < 20; sweeps++) {
    host.remove();
    await vi.waitFor(() => expect(host.isConnected).toBe(true));
    expect(document.activeElement).toBe(host);
  }
  host.remove();
  await new Promise((done) => setTimeout(done));
  expect(host.isConnected).toBe(false);
});

test('one that the student has left stays away', async () => {
  const { leave } = raise();
  leave();
  document.documentElement.append(document.createElement('x-more'));
  await new Promise((done) => setTimeout(done));
  expect(hosts()).toEqual([]);
});
