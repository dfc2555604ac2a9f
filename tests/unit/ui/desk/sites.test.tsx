// @vitest-environment jsdom
import { render, screen } from '@testing-library/preact';
import { afterEach, beforeEach, expect, test, vi } from 'vitest';
import { fakeBrowser } from 'wxt/testing/fake-browser';
import { SiteList, SiteSwitch } from '#lib/ui/desk/sites.tsx';
import { siteOf } from '#lib/ui/sites.ts';
import { fakeExtension } from '../fake-extension.ts';
import { clearScreen, press, see } from '../student.ts';

const LAGOON = 'https://lagoonery.invalid/*';
const SHORE = 'https://shore.invalid/*';

beforeEach(() => {
  vi.restoreAllMocks();
  fakeExtension({ granted: [SHORE, LAGOON] });
});
afterEach(clearScreen);

test.each([
  ['https://lagoonery.invalid/waves?deep#orbits', LAGOON],
  ['http://127.0.0.1:8080/waves', 'http://127.0.0.1/*'],
  ['file:///home/me/tides.html', null],
  ['ni:///sha-256;abc', null],
  ['waves', null],
])('the site of %s is %s', (url, site) => {
  expect(siteOf(url)).toBe(site);
});

test('the sites that were granted stand in order, and one can be given back', async () => {
  render(<SiteList />);
  const names = async () =>
    (await screen.findAllByRole('listitem')).map((item) => item.firstChild!.textContent);
  expect(await names()).toEqual(['lagoonery.invalid', 'shore.invalid']);
  await press(/lagoonery\.invalid/);
  await vi.waitFor(async () => expect(await names()).toEqual(['shore.invalid']));
  expect(await fakeBrowser.permissions.getAll()).toMatchObject({ origins: [SHORE] });
});

test('a site is asked for and given back beside what is from there', async () => {
  render(<SiteSwitch url="https://tidepool.invalid/pressure" />);
  const box = (await see('checkbox', /tidepool\.invalid/)) as HTMLInputElement;
  expect(box.checked).toBe(false);
  box.click();
  await vi.waitFor(() => expect(box.checked).toBe(true));
  expect(fakeBrowser.permissions.request).toHaveBeenCalledWith({ origins: ['https://tidepool.invalid/*'] });
  await vi.waitFor(() => expect(box.disabled).toBe(false));
  box.click();
  await vi.waitFor(() => expect(box.checked).toBe(false));
  expect(await fakeBrowser.permissions.getAll()).toMatchObject({ origins: [SHORE, LAGOON] });
});

test('for what is not on the web there is nothing to ask for', async () => {
  render(<SiteSwitch url="file:///home/me/tides.html" />);
  await vi.waitFor(() => expect(fakeBrowser.permissions.getAll).toHaveBeenCalled());
  expect(screen.queryByRole('checkbox')).toBeNull();
});
