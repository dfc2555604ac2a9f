import { expect, test } from 'vitest';
import { driveChromium } from '#tests/tools/chromium-driver.ts';
import { until } from '#tests/tools/driver.ts';
import { FirefoxPopup } from '#tests/tools/firefox-parts.ts';
import { driveFirefox } from '#tests/tools/firefox-driver.ts';

const TOLD = 'The browser lets no extension read this page';

test('where Chromium lets no script in, the popup opens by itself and says so', async () => {
  const driver = await driveChromium();
  try {
    await driver.tab.goto('chrome://version');
    // A real click gives the page the keyboard.
    await driver.tab.clickAt(300, 300);
    await until('the keyboard', () => driver.tab.run(() => document.hasFocus()));
    // On a busy machine a key that comes right after the click can be lost: a person would press it again.
    const popup = await until('the popup', async () => {
      const opened = driver.browser.context.waitForEvent('page', { timeout: 5_000 }).catch(() => null);
      await driver.tab.openSlip();
      return opened;
    });
    await until('the message', () => popup.evaluate((text) => document.body.innerText.includes(text), TOLD));
    expect(popup.url()).toBe(driver.browser.url('popup.html'));
  } finally {
    await driver.close();
  }
});

test('where Firefox lets no script in, a page of ours says so', async () => {
  const driver = await driveFirefox();
  try {
    await driver.tab.goto('about:license');
    await driver.tab.openSlip();
    const told = await until('the popup or a tab of ours', async () => {
      const [popup] = await driver.firefox.inChrome(() =>
        driver.firefox.findAll('panel[panelopen=true] browser.webextension-popup-browser'),
      );
      return popup ? 'popup' : (await driver.firefox.tabs()).length > 1 && 'tab';
    });
    if (told === 'tab') await driver.firefox.switchTo((await driver.firefox.tabs()).at(-1)!);
    const place = told === 'tab' ? driver.tab : new FirefoxPopup(driver.firefox);
    const text = await until('the message', async () => {
      const shown = await place.run(() => document.body.innerText);
      return shown.includes(TOLD) && shown;
    });
    expect(text).toContain('Open the explanation as an ordinary web page');
  } finally {
    await driver.close();
  }
});
