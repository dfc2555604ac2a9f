import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { driveChromium } from '#tests/tools/chromium-driver.ts';
import { type BrowserDriver, click, select, until } from '#tests/tools/driver.ts';
import { driveFirefox } from '#tests/tools/firefox-driver.ts';
import { clickOnSlip, keepIt, openLastClip, slipOf } from '#tests/tools/keep-from-popup.ts';
import { bringInSyllabus } from '#tests/tools/main-job.ts';
import { type Served127, serve } from '#tests/tools/serve.ts';
import { lookAtSlip } from '#tests/tools/slip-look.ts';

const SYLLABUS = '1 Hydrostatics\n\t1.1 Pressure and depth\n2 Waves\n\t2.1 Dispersion';

const FRAMED = `<!doctype html><title>Notes on swell</title><h1>Swell</h1>
<p id="inner">Long swell outruns the storm that made it.</p>`;

const CARD = `<!doctype html><title>Cards</title><h1>Waves on cards</h1><x-card></x-card>
<script>
  customElements.define('x-card', class extends HTMLElement {
    constructor() {
      super();
      this.attachShadow({ mode: 'open' }).innerHTML =
        '<p>Group speed in deep water is <b>half</b> the phase speed.</p>';
    }
  });
</script>`;

const EDITOR = `<!doctype html><title>A draft</title><h1>Tides</h1>
<div id="draft" contenteditable>Spring tides come at new and at full moon.</div>`;

/** Two seconds after loading it writes itself anew, and takes away what it does not know. */
const RESTLESS = `<!doctype html><title>Restless</title><main><p id="here">Pressure grows with depth.</p></main>
<button id="rewrite">again</button>
<script>
  document.querySelector('#rewrite').addEventListener('click', () => {
    setTimeout(() => {
      for (const stranger of document.documentElement.children)
        if (!['head', 'body'].includes(stranger.localName)) stranger.remove();
      document.body.innerHTML = '<main><p>Quite another text, and no other.</p></main>';
    }, 1500);
  });
</script>`;

const STRICT = {
  body: `<!doctype html><title>Strict</title><article><h1>Echoes in the deep</h1><h2>Sound</h2>
<p id="strict">Sound in sea water travels at about 1500 metres in a second, faster in warm water and under pressure.</p>
<p>Near the surface it is the warmth that counts; far below, the pressure of all the water above.</p>
<h2>Light</h2><p>Light is lost within two hundred metres, red before blue, and most of it far sooner than that.</p>
</article>`,
  headers: {
    'content-security-policy':
      "default-src 'none'; require-trusted-types-for 'script'; trusted-types 'none'; sandbox allow-scripts allow-same-origin",
  },
};

describe.each([
  ['Chromium', driveChromium],
  ['Firefox', driveFirefox],
] as const)('selections in odd places in %s', (_name, drive) => {
  let driver: BrowserDriver;
  let pages: Served127;
  let elsewhere: Served127;

  beforeAll(async () => {
    elsewhere = await serve({ '/inside': FRAMED });
    const strange = elsewhere.origin.replace('127.0.0.1', 'localhost');
    pages = await serve({
      '/inside': FRAMED,
      '/frame':
        '<!doctype html><title>Around</title><p id="out">Around it.</p><iframe src="/inside"></iframe>',
      '/strange': `<!doctype html><title>Around</title><p>Around.</p><iframe src="${strange}/inside"></iframe>`,
      '/card': CARD,
      '/editor': EDITOR,
      '/restless': RESTLESS,
      '/strict': STRICT,
    });
    driver = await drive();
    await bringInSyllabus(driver, SYLLABUS);
  });
  afterAll(async () => {
    await driver?.close();
    await pages?.close();
    await elsewhere?.close();
  });

  const middleOf = (css: string) =>
    driver.tab.run((selector) => {
      const box = document.querySelector(selector)!.getBoundingClientRect();
      return { x: box.x + box.width / 2, y: box.y + box.height / 2 };
    }, css);
  const lastKept = async () => {
    await openLastClip(driver);
    return driver.tab.run(() => ({
      text: document.querySelector('.passage')!.textContent.trim(),
      words: document.querySelector('textarea')!.value,
      link: document.querySelector<HTMLAnchorElement>('.provenance a')!.href,
    }));
  };

  test('in a frame of the same site: the passage and the address of the frame are kept', async () => {
    await driver.tab.goto(`${pages.origin}/frame`);
    await until('the frame', () =>
      driver.tab.run(() => !!document.querySelector('iframe')!.contentDocument?.querySelector('#inner')),
    );
    const frame = await middleOf('iframe');
    await driver.tab.clickAt(frame.x, frame.y);
    await driver.tab.run(() => {
      const inner = document.querySelector('iframe')!.contentDocument!;
      inner.getSelection()!.selectAllChildren(inner.querySelector('#inner')!);
    });
    await driver.tab.openSlip();
    const look = await slipOf(driver);
    expect(look.passage).toBe('Long swell outruns the storm that made it.');
    await keepIt(driver);
    const { text, link } = await lastKept();
    expect(text).toBe('Long swell outruns the storm that made it.');
    expect(new URL(link).pathname).toBe('/inside');
  });

  test('in a frame of another site: it is told, and the way into the frame offered', async () => {
    await driver.tab.goto(`${pages.origin}/strange`);
    const frame = await middleOf('iframe');
    await driver.tab.clickAt(frame.x, frame.y);
    await until('the focus in the frame', () =>
      driver.tab.run(() => document.activeElement!.localName === 'iframe'),
    );
    await driver.tab.openSlip();
    const look = await until('the slip', () => lookAtSlip(driver.tab));
    expect(look.text).toContain('comes from another site');
    expect(look.text).toContain('Open that part');
    await driver.tab.press('Escape');
  });

  test('within an element that keeps a tree of its own', async () => {
    await driver.tab.goto(`${pages.origin}/card`);
    const card = await middleOf('x-card');
    await driver.tab.clickAt(card.x, card.y);
    await driver.tab.run(() => {
      const words = document.querySelector('x-card')!.shadowRoot!.querySelector('p')!;
      getSelection()!.setBaseAndExtent(words, 0, words, words.childNodes.length);
    });
    await driver.tab.openSlip();
    const look = await slipOf(driver);
    expect(look.passage.trim()).toBe('Group speed in deep water is half the phase speed.');
    await keepIt(driver);
    expect((await lastKept()).text).toBe('Group speed in deep water is half the phase speed.');
  });

  test('in a text that can be edited: it is kept, and not changed', async () => {
    await driver.tab.goto(`${pages.origin}/editor`);
    await select(driver.tab, '#draft');
    await driver.tab.openSlip();
    expect((await slipOf(driver)).passage.trim()).toBe('Spring tides come at new and at full moon.');
    await driver.tab.type('Twice a month.');
    await keepIt(driver);
    const draft = await driver.tab.run(() => document.querySelector('#draft')!.textContent);
    expect(draft).toBe('Spring tides come at new and at full moon.');
  });

  test('on a page that writes itself anew meanwhile: nothing of what was typed is lost', async () => {
    await driver.tab.goto(`${pages.origin}/restless`);
    await click(driver.tab, 'again');
    await select(driver.tab, '#here');
    await driver.tab.openSlip();
    await slipOf(driver);
    await driver.tab.type('More water above');
    await until('the page to have changed', () =>
      driver.tab.run(() => document.body.textContent.includes('Quite another text')),
    );
    await until('the slip to be back', async () => (await lookAtSlip(driver.tab))?.focus === 'own-words');
    await driver.tab.type(' weighs more.');
    await keepIt(driver);
    expect(await lastKept()).toMatchObject({
      text: 'Pressure grows with depth.',
      words: 'More water above weighs more.',
    });
  });

  test('on a page with the strictest policy: kept, and widened to its section', async () => {
    await driver.tab.goto(`${pages.origin}/strict`);
    await select(driver.tab, '#strict');
    await driver.tab.openSlip();
    await slipOf(driver);
    await clickOnSlip(driver, '.scopes button');
    await until('the parts', async () => {
      const parts = await driver.tab.inSlip((root) => root!.querySelectorAll('.parts input').length);
      return parts === 3;
    });
    await driver.tab.press('Enter');
    await until('it to be kept', async () => (await lookAtSlip(driver.tab))?.text.startsWith('Kept'));
    await driver.tab.press('Escape');
    expect((await lastKept()).text).toMatch(/^Sound\s*Sound in sea water.*water above\.$/s);
  });
});
