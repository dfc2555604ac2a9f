import { expect, test } from 'vitest';
import { startLearningPages } from '#tests/tools/demo/server.ts';
import { select, until } from '#tests/tools/driver.ts';
import { driveFirefox } from '#tests/tools/firefox-driver.ts';
import { lookAtSlip } from '#tests/tools/slip-look.ts';

// Only Firefox lets a test reach the browser's own menus; both browsers run the same code.
test('the menu of the right mouse button opens the slip', async () => {
  const pages = await startLearningPages();
  const { tab, firefox, close } = await driveFirefox();
  try {
    await tab.goto(`${pages.origin}/ebbledore/hydrostatic-balance`);
    await select(tab, '#force-balance');
    const { x, y } = await tab.run(() => {
      const box = document.querySelector('#force-balance p, #force-balance')!.getBoundingClientRect();
      return { x: Math.round(box.x + 40), y: Math.round(box.y + 10) };
    });
    const actions = [
      { type: 'pointerMove', x, y, origin: 'viewport' },
      { type: 'pointerDown', button: 2 },
      { type: 'pointerUp', button: 2 },
    ];
    await firefox.performActions([{ type: 'pointer', id: 'mouse', actions }]);
    const inMenu = (script: string) => firefox.inChrome(() => firefox.run<[], boolean>(script));
    await until('the menu', () =>
      inMenu(`const menu = document.getElementById('contentAreaContextMenu');
        const item = [...menu.querySelectorAll('menuitem')].find(({ label }) => label === 'Keep in Plumbline');
        if (menu.state !== 'open' || !item) return false;
        menu.activateItem(item);
        return true;`),
    );
    const slip = await until('the slip', () => lookAtSlip(tab));
    expect(slip.text).toContain('There is no course yet');
  } finally {
    await close();
    await pages.close();
  }
});
