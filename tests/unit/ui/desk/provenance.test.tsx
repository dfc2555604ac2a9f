// @vitest-environment jsdom
import { fireEvent, render, screen } from '@testing-library/preact';
import { afterEach, beforeEach, expect, test, vi } from 'vitest';
import type { Clip } from '#lib/model/clip.ts';
import { FRAGMENT_OF } from '#lib/model/selector.ts';
import type { Source } from '#lib/model/source.ts';
import { Provenance } from '#lib/ui/desk/provenance.tsx';
import { aClip, newId } from '../../builders.ts';
import { fakeExtension } from '../fake-extension.ts';
import { clearScreen, press, read, see } from '../student.ts';

beforeEach(() => fakeExtension());
afterEach(() => {
  clearScreen();
  vi.unstubAllGlobals();
});

const NOON = new Date(2026, 2, 3, 12).getTime();
const REFERENCE =
  'A. Nemo (2021) How waves travel. Open lessons. Available at: http://127.0.0.1/waves (Accessed: 3 March 2026).';

function showSource(over: Partial<Source> = {}, clip: Partial<Clip> = {}): void {
  const source: Source = {
    id: newId(),
    createdAt: NOON,
    changedAt: NOON,
    kind: 'page',
    url: 'http://127.0.0.1/waves',
    title: 'How waves travel',
    site: 'Open lessons',
    author: 'A. Nemo',
    published: '2021-10-03',
    licence: 'http://127.0.0.1/licence',
    ...over,
  };
  render(<Provenance source={source} clip={aClip({ createdAt: NOON, ...clip })} />);
}

/** A clipboard that takes or refuses what is written to it. */
function clipboard(writeText: (text: string) => Promise<void>): void {
  vi.stubGlobal('navigator', Object.create(navigator, { clipboard: { value: { writeText } } }));
}

test('it says where the clip is from, when it was published and kept, and on what terms', async () => {
  showSource();
  const region = await see('region', 'Where it is from');
  expect(region.textContent).toContain(
    'How waves travel · A. Nemo · Open lessons · 3 October 2021 · Licence · kept on 3 March 2026',
  );
  expect(region.textContent).toMatch(/private study.*own terms apply/);
  for (const [name, href] of [
    ['How waves travel', 'http://127.0.0.1/waves#:~:text=Long%20waves%20outrun%20short%20ones'],
    ['Licence', 'http://127.0.0.1/licence'],
  ] as const) {
    const link = screen.getByRole('link', { name });
    expect([link.getAttribute('href'), link.getAttribute('rel')]).toEqual([href, 'noreferrer noopener']);
  }
});

test('what the page did not say is left out', async () => {
  showSource({ author: '', published: '', licence: '', title: '' });
  const region = await see('region', 'Where it is from');
  expect(region.textContent).toContain('http://127.0.0.1/waves · Open lessons · kept on');
  expect(screen.queryByRole('link', { name: 'Licence' })).toBeNull();
});

test.each([
  ['video', 'http://127.0.0.1/film', FRAGMENT_OF.media, 't=9.5', 'http://127.0.0.1/film#t=9.5'],
  ['pdf', 'http://127.0.0.1/sheet.pdf', FRAGMENT_OF.pdf, 'page=3', 'http://127.0.0.1/sheet.pdf#page=3'],
] as const)('of a %s, its link leads to the clip’s own place', async (kind, url, conformsTo, value, href) => {
  showSource({ kind, url }, { selectors: [{ type: 'FragmentSelector', conformsTo, value }] });
  const link = await see('link', 'How waves travel');
  expect(link.getAttribute('href')).toBe(href);
  fireEvent.click(link);
  expect(screen.queryByText(/Your copy stays here/)).toBeNull();
});

test('once a page was opened at a passage, it says what it means if the passage is not there', async () => {
  showSource();
  const link = await see('link', 'How waves travel');
  expect(screen.queryByText(/Your copy stays here/)).toBeNull();
  fireEvent.click(link);
  await read(/has changed since. Your copy stays here/);
});

test('a file has no link', async () => {
  showSource({ kind: 'pdf', url: 'ni:///sha-256;f4OxZX_x_FO5LcGBSKHWXfwtSx-j1ncoSt3SABJtkGk', licence: '' });
  await read(/How waves travel/);
  expect(screen.queryByRole('link')).toBeNull();
});

test('the reference is copied, and it says so', async () => {
  const writeText = vi.fn(async (_text: string) => undefined);
  clipboard(writeText);
  showSource();
  await press('Copy the reference');
  await vi.waitFor(() => expect(screen.getByRole('status').textContent).toBe('Copied.'));
  expect(writeText.mock.calls).toEqual([[REFERENCE]]);
  expect(screen.queryByRole('textbox')).toBeNull();
});

test('where copying is not let it stands there selected', async () => {
  clipboard(() => Promise.reject(new DOMException('no', 'NotAllowedError')));
  showSource();
  fireEvent.click(screen.getByRole('button', { name: 'Copy the reference' }));
  const field = (await see('textbox', 'Reference')) as HTMLTextAreaElement;
  expect([field.value, field.readOnly]).toEqual([REFERENCE, true]);
  expect([field.selectionStart, field.selectionEnd]).toEqual([0, REFERENCE.length]);
  expect(screen.getByRole('status').textContent).toMatch(/^Your browser did not let it be copied/);
});
