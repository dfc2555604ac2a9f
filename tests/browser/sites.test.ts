import { cp, mkdtemp, readFile, rm, writeFile } from 'node:fs/promises';
import { type Server, createServer } from 'node:http';
import type { AddressInfo } from 'node:net';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { driveChromium } from '#tests/tools/chromium-driver.ts';
import { type BrowserDriver, click, sees, select, until } from '#tests/tools/driver.ts';
import { driveFirefox } from '#tests/tools/firefox-driver.ts';
import { allow } from '#tests/tools/firefox-parts.ts';
import { bringInSyllabus } from '#tests/tools/main-job.ts';
import { lookAtSlip } from '#tests/tools/slip-look.ts';

const PASSAGE = 'The tide follows the moon, which pulls hardest on the water that lies nearest to it.';
const OTHER = 'Waves in deep water outrun one another: the longer the wave, the faster it travels.';

/** A page that draws itself: at once, late, or without the passage; and another one under its own address. */
type Mode = 'now' | 'late' | 'gone';

const pageIn = (
  mode: Mode,
): string => `<!doctype html><html lang="en"><title>Tides</title><main></main><script>
  const draw = (text) => {
    document.querySelector('main').innerHTML =
      '<h1>Tides</h1><p>${OTHER}</p><p id="passage" style="margin: 4000px 0">' + text + '</p>';
  };
  const drawHere = () => draw(location.pathname === '/tides' ? '${mode === 'gone' ? OTHER : PASSAGE}' : 'Another page.');
  addEventListener('popstate', drawHere);
  setTimeout(drawHere, ${mode === 'late' ? 1500 : 0});
</script></html>`;

interface Granted {
  driver: BrowserDriver;
  /** Answers the browser's question for the site, which the desk has asked. */
  allow(): Promise<void>;
  cleanUp(): Promise<void>;
}

/** Chromium's question cannot be answered by a test: the site is granted in the manifest of a copy. */
async function chromiumGranted(): Promise<Granted> {
  const folder = await mkdtemp(join(tmpdir(), 'plumbline-granted-'));
  await cp('.output/chrome-mv3', folder, { recursive: true });
  const manifest = JSON.parse(await readFile(join(folder, 'manifest.json'), 'utf8'));
  await writeFile(
    join(folder, 'manifest.json'),
    JSON.stringify({ ...manifest, host_permissions: ['http://127.0.0.1/*'] }),
  );
  return {
    driver: await driveChromium({ extension: folder }),
    allow: async () => undefined,
    cleanUp: () => rm(folder, { recursive: true, force: true }),
  };
}

async function firefoxAsked(): Promise<Granted> {
  const driver = await driveFirefox();
  return { driver, allow: () => allow(driver.firefox), cleanUp: async () => undefined };
}

/** The passages that are painted in the page. Highlights are shared by all worlds of a page. */
const painted = () => [...CSS.highlights.values()].flatMap((highlight) => [...highlight].map(String));

describe.each([
  ['Chromium', chromiumGranted],
  ['Firefox', firefoxAsked],
] as const)('clips on a site that was granted in %s', (name, start) => {
  let server: Server;
  let mode: Mode = 'now';
  let url: string;
  let granted: Granted;

  const tab = () => granted.driver.tab;
  const shows = (what: string, passages: string[]) =>
    until(what, async () => JSON.stringify(await tab().run(painted)) === JSON.stringify(passages));
  const open = async (next: Mode) => {
    mode = next;
    await tab().goto(url);
  };
  const openClip = async () => {
    await tab().gotoDesk('#/clips');
    await click(tab(), PASSAGE.slice(0, 20), '.cards');
    await sees(tab(), 'Always show my clips on 127.0.0.1');
  };
  const isSwitchedOn = () =>
    tab().run(() => document.querySelector<HTMLInputElement>('.provenance input[type=checkbox]')!.checked);
  const pressSwitch = async () => {
    const { x, y } = await tab().run(() => {
      const box = document.querySelector('.provenance input[type=checkbox]')!;
      box.scrollIntoView({ block: 'center' });
      const { left, top, width, height } = box.getBoundingClientRect();
      return { x: left + width / 2, y: top + height / 2 };
    });
    await tab().clickAt(x, y);
  };

  beforeAll(async () => {
    server = createServer((_request, answer) => {
      answer.setHeader('content-type', 'text/html; charset=utf-8');
      answer.end(pageIn(mode));
    });
    await new Promise<void>((resolve) => server.listen(0, '127.0.0.1', resolve));
    url = `http://127.0.0.1:${(server.address() as AddressInfo).port}/tides`;
    granted = await start();
    await bringInSyllabus(granted.driver, '1 Tides\n2 Waves');
    await open('now');
    await select(tab(), '#passage');
    await tab().openSlip();
    await until('the slip', async () => (await lookAtSlip(tab()))?.focus === 'own-words');
    await tab().press('Enter');
    await until('it to be kept', async () => (await lookAtSlip(tab()))?.text.startsWith('Kept'));
    await openClip();
    if (!(await isSwitchedOn())) await pressSwitch();
    await granted.allow();
    await until('the site to be granted', isSwitchedOn);
  });
  afterAll(async () => {
    await granted?.driver.close();
    await granted?.cleanUp();
    server?.closeAllConnections();
    server?.close();
  });

  test('are shown when the page is opened again, and no element is added', async () => {
    await open('now');
    await shows('the passage', [PASSAGE]);
    const drawn = await tab().run(() => [
      document.querySelectorAll('body *').length,
      document.documentElement.children.length,
    ]);
    // Heading, two paragraphs, main and script; head and body.
    expect(drawn).toEqual([5, 2]);
    expect(await tab().run(() => scrollY)).toBe(0);
  });

  test('are shown when the page brings its text late', async () => {
    await open('late');
    expect(await tab().run(painted)).toEqual([]);
    await shows('the passage', [PASSAGE]);
  });

  test('come back when the page draws itself anew', async () => {
    await open('now');
    await shows('the passage', [PASSAGE]);
    await tab().run(() => (document.querySelector('#passage')!.outerHTML = '<p>Loading</p>'));
    await shows('nothing', []);
    await tab().run((text) => {
      const [first, ...rest] = text.split(', ');
      document.querySelector('main')!.innerHTML =
        `<h1>Tides</h1><section><p>${first}, <em>${rest.join(', ')}</em></p></section>`;
    }, PASSAGE);
    await shows('the passage', [PASSAGE]);
    expect(await tab().run(() => document.querySelector('section')!.innerHTML)).toBe(
      PASSAGE.replace(', ', ', <em>').replace(/^(.*)$/, '<p>$1</em></p>'),
    );
  });

  test('go and come as the page changes its address without loading', async () => {
    await open('now');
    await shows('the passage', [PASSAGE]);
    await tab().run(() => {
      history.pushState(null, '', '/waves');
      dispatchEvent(new PopStateEvent('popstate'));
    });
    await shows('nothing', []);
    await tab().run(() => history.back());
    await shows('the passage', [PASSAGE]);
  });

  test('are led to from the desk, and when one is gone the student is told so and finds the copy', async () => {
    for (const next of ['late', 'gone'] as const) {
      await openClip();
      mode = next;
      await click(tab(), 'Tides', '.provenance');
      await sees(tab(), 'Your copy stays here');
      await until('the page to open', async () => {
        await granted.driver.toNewestTab();
        return tab().run(() => location.pathname === '/tides');
      });
      if (next === 'late') {
        await shows('the passage', [PASSAGE]);
        await until('it to be in view', () =>
          tab().run(() => {
            const { top } = document.querySelector('#passage')!.getBoundingClientRect();
            return top >= 0 && top < innerHeight;
          }),
        );
        expect(await lookAtSlip(tab())).toBeNull();
      } else {
        const told = await until('a word', () => lookAtSlip(tab()));
        expect(told.text).toContain('not on this page any more');
        await tab().press('Enter');
        await until('the desk to open', async () => {
          await granted.driver.toNewestTab();
          return tab().run(() => location.hash.startsWith('#/clip/'));
        });
        await sees(tab(), PASSAGE);
      }
    }
  });

  test('are shown no more once the site is given back', async () => {
    await tab().gotoDesk('#/course');
    await sees(tab(), 'Sites where clips are shown');
    // What the manifest of Chromium’s copy grants cannot be given back.
    if (name === 'Chromium') return sees(tab(), '127.0.0.1');
    await click(tab(), 'Stop showing clips on 127.0.0.1');
    await sees(tab(), 'Clips are shown on no site');
    await open('now');
    await sees(tab(), PASSAGE);
    await new Promise((resolve) => setTimeout(resolve, 1500));
    expect(await tab().run(painted)).toEqual([]);
    return undefined;
  });
});
