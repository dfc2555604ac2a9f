import { afterAll, beforeAll, beforeEach, describe, expect, test } from 'vitest';
import { driveChromium } from '#tests/tools/chromium-driver.ts';
import { startLearningPages } from '#tests/tools/demo/server.ts';
import { type BrowserDriver, click, select, sees, textOf, until } from '#tests/tools/driver.ts';
import { driveFirefox } from '#tests/tools/firefox-driver.ts';
import { bringInSyllabus } from '#tests/tools/main-job.ts';
import { type SlipLook, lookAtSlip } from '#tests/tools/slip-look.ts';

const SYLLABUS =
  '1 Hydrostatics\n\t1.1 Hydrostatic balance\n\t1.2 Pressure and depth\n2 Waves\n\t2.1 Dispersion\n\t2.2 Swell';

describe.each([
  ['Chromium', driveChromium],
  ['Firefox', driveFirefox],
] as const)('the slip in %s', (name, drive) => {
  let driver: BrowserDriver;
  let pages: Awaited<ReturnType<typeof startLearningPages>>;

  beforeAll(async () => {
    pages = await startLearningPages();
    driver = await drive();
  });
  afterAll(async () => {
    await driver?.close();
    await pages?.close();
  });

  const open = async (isReady: (look: SlipLook) => boolean = ({ focus }) => focus === 'own-words') => {
    await driver.tab.openSlip();
    return until('the slip', async () => {
      const look = await lookAtSlip(driver.tab);
      return look && isReady(look) && look;
    });
  };
  const notice = (text: string) => open((look) => look.text.includes(text));
  const gone = () => until('the slip to go', async () => (await lookAtSlip(driver.tab)) === null);
  const keep = async () => {
    await driver.tab.press('Enter');
    await until('it to be kept', async () => (await lookAtSlip(driver.tab))?.text.startsWith('Kept'));
    await driver.tab.press('Escape');
    await gone();
  };

  test('without a course it says where to start one', async () => {
    await driver.tab.goto(`${pages.origin}/ebbledore/hydrostatic-balance`);
    await select(driver.tab, '#force-balance');
    const look = await notice('There is no course yet');
    expect(look.focus).toBe('button');
    await driver.tab.press('Escape');
    await gone();
  });

  describe('with a course', () => {
    beforeAll(async () => {
      await bringInSyllabus(driver, SYLLABUS);
    });
    beforeEach(async () => {
      await driver.tab.goto(`${pages.origin}/ebbledore/hydrostatic-balance`);
    });

    test('an empty selection is told, and what to do', async () => {
      await notice('Nothing is selected');
      await driver.tab.press('Escape');
      await gone();
    });

    test('by keyboard alone: Tab goes round inside, Escape leaves, and the page hears nothing of the typing', async () => {
      await driver.tab.run(() => {
        const heard: string[] = [];
        Object.assign(window, { heard });
        document.addEventListener('keydown', (event) => heard.push(event.key));
        document.addEventListener('input', () => heard.push('input'));
      });
      await select(driver.tab, '#force-balance');
      await open();
      await driver.tab.type('slab');
      const stops: string[] = [];
      for (let i = 0; i < 20; i++) {
        await driver.tab.press('Tab');
        stops.push(
          await driver.tab.inSlip(
            (root) => root!.activeElement?.textContent.trim() || root!.activeElement?.id || 'field',
          ),
        );
      }
      expect(stops).toContain('own-words');
      expect(stops.some((stop) => stop.startsWith('Keep'))).toBe(true);
      expect(stops.some((stop) => stop.startsWith('Leave'))).toBe(true);
      await driver.tab.press('Escape');
      await gone();
      const heard = await driver.tab.run(() => (window as unknown as { heard: string[] }).heard);
      expect(heard.filter((key) => key !== 'Alt' && key !== 'k')).toEqual([]);
    });

    test('the page cannot reach into it, and its styles do not either', async () => {
      await driver.tab.run(() => {
        const style = document.createElement('style');
        style.textContent = 'body > *, plumbline-slip { display: none !important; color: red !important; }';
        Object.assign(window, { style });
      });
      await select(driver.tab, '#force-balance');
      await driver.tab.run(() => void document.head.append((window as unknown as { style: Node }).style));
      await open();
      const page = await driver.tab.run(() => {
        const slip = document.querySelector('plumbline-slip')!;
        return { root: slip.shadowRoot, children: slip.childElementCount };
      });
      expect(page).toEqual({ root: null, children: 0 });
      const shown = await driver.tab.inSlip((root) => {
        const sheet = root!.querySelector<HTMLElement>('.sheet')!;
        return { width: sheet.offsetWidth > 200, color: getComputedStyle(sheet).color };
      });
      expect(shown.width).toBe(true);
      expect(shown.color).not.toBe('rgb(255, 0, 0)');
      await driver.tab.press('Escape');
      await gone();
    });

    // In Firefox tests look into the slip with the browser's own privileges, and events made so count as real ones.
    test.runIf(name === 'Chromium')('events made by a script do nothing', async () => {
      await select(driver.tab, '#force-balance');
      await open();
      await driver.tab.inSlip((root) => {
        root!
          .querySelector<HTMLButtonElement>('.foot button')!
          .dispatchEvent(new MouseEvent('click', { bubbles: true }));
        root!
          .querySelector('#own-words')!
          .dispatchEvent(new KeyboardEvent('keydown', { key: 'Enter', bubbles: true }));
      });
      await new Promise((resolve) => setTimeout(resolve, 300));
      expect((await lookAtSlip(driver.tab))!.text).toContain('In your own words');
      await driver.tab.press('Escape');
      await gone();
    });

    test('a passage kept before opens its clip, and saving changes it instead of doubling it', async () => {
      await select(driver.tab, '#force-balance');
      await open();
      await driver.tab.type('First words.');
      await keep();
      await select(driver.tab, '#force-balance');
      const again = await open();
      expect(again.text).toContain('You kept this passage before');
      await driver.tab.type(' And more.');
      await keep();
      await driver.tab.gotoDesk('#/clips');
      await sees(driver.tab, 'All (1)');
      expect(await textOf(driver.tab)).toContain('First words. And more.');
    });

    test('the button in the toolbar popup opens it too', async () => {
      await select(driver.tab, '#force-balance');
      const popup = await driver.tab.openPopup();
      await click(popup, 'Keep the selected passage');
      const look = await until('the slip', async () => {
        const now = await lookAtSlip(driver.tab);
        return now?.focus === 'own-words' && now;
      });
      expect(look.text).toContain('You kept this passage before');
    });

    test('2 MB of selection is refused with its size, and nothing is kept', async () => {
      await driver.tab.goto(`${pages.origin}/deep-water/long`);
      await select(driver.tab, 'article');
      const look = await notice('a clip holds');
      expect(look.text).toMatch(/You selected \d{7} characters, and a clip holds 100000/);
      await driver.tab.press('Escape');
      await driver.tab.gotoDesk('#/clips');
      await sees(driver.tab, 'All (1)');
    });

    test('a hostile page: what is kept holds no handler, no address and no style, and nothing of it runs in the desk', async () => {
      await driver.tab.goto(`${pages.origin}/rough-water/`);
      await select(driver.tab, '#post');
      await open();
      await keep();
      const asked = pages.requests.length;
      await driver.tab.gotoDesk('#/clips');
      await sees(driver.tab, 'All (2)');
      await driver.tab.run(() => document.querySelector<HTMLAnchorElement>('.excerpt')!.click());
      await until('the passage', () => driver.tab.run(() => document.querySelector('.passage') !== null));
      const kept = await driver.tab.run(() => {
        const passage = document.querySelector('.passage')!;
        const attributes = [...passage.querySelectorAll('*')].flatMap((one) =>
          // A picture's bytes lie in the deck, and have an address for as long as they are shown.
          [...one.attributes].flatMap(({ name, value }) =>
            name === 'src' && value.startsWith('blob:') ? [] : [name],
          ),
        );
        return {
          text: passage.textContent.trim().length,
          risky: attributes.filter((name) => /^on|^(style|href|src|srcset|action|id|class)$/.test(name)),
          active: passage.querySelectorAll(
            'script, iframe, object, embed, form, input, svg, style, link, img:not([data-picture]), a',
          ).length,
          canary: (window as unknown as { __canary?: number }).__canary ?? 0,
        };
      });
      expect(kept.text).toBeGreaterThan(100);
      expect(kept).toMatchObject({ risky: [], active: 0, canary: 0 });
      expect(pages.requests.slice(asked)).toEqual([]);
    });

    test('text from right to left and in other scripts is kept as it is', async () => {
      for (const [path, css] of [
        ['/far-shore/ar/salinity', '#definition'],
        ['/far-shore/ja/shallow-waves', '#speed'],
      ] as const) {
        await driver.tab.goto(`${pages.origin}${path}`);
        await select(driver.tab, css);
        const look = await open();
        const firstWords = await driver.tab.run(
          (selector) => document.querySelector(selector)!.textContent.trim().slice(0, 12),
          css,
        );
        expect(look.passage.trim().startsWith(firstWords)).toBe(true);
        await driver.tab.press('Escape');
        await gone();
      }
    });
  });
});
