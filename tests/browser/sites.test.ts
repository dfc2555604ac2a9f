import { cp, mkdtemp, readFile, rm, writeFile } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { expect, test } from 'vitest';
import { driveChromium } from '#tests/tools/chromium-driver.ts';
import { startLearningPages } from '#tests/tools/demo/server.ts';
import { select, sees, until } from '#tests/tools/driver.ts';
import { bringInSyllabus } from '#tests/tools/main-job.ts';
import { lookAtSlip } from '#tests/tools/slip-look.ts';

/** How many passages are painted in the page. Highlights are shared by all worlds of a page. */
const painted = () => [...CSS.highlights.values()].reduce((sum, highlight) => sum + highlight.size, 0);

// The browser's own question for a site cannot be answered by a test: the site is granted in the manifest of a copy.
test('on a site that was granted, what was kept is shown when the page is opened again, and no element is added', async () => {
  const folder = await mkdtemp(join(tmpdir(), 'plumbline-granted-'));
  await cp('.output/chrome-mv3', folder, { recursive: true });
  const manifest = JSON.parse(await readFile(join(folder, 'manifest.json'), 'utf8'));
  await writeFile(
    join(folder, 'manifest.json'),
    JSON.stringify({ ...manifest, host_permissions: ['http://127.0.0.1/*'] }),
  );
  const pages = await startLearningPages();
  const driver = await driveChromium({ extension: folder });
  try {
    await bringInSyllabus(driver, '1 Hydrostatics\n\t1.1 Hydrostatic balance\n2 Waves');
    await driver.tab.goto(`${pages.origin}/ebbledore/hydrostatic-balance`);
    expect(await driver.tab.run(painted)).toBe(0);
    await select(driver.tab, '#force-balance');
    await driver.tab.openSlip();
    await until('the slip', async () => (await lookAtSlip(driver.tab))?.focus === 'own-words');
    await driver.tab.press('Enter');
    await until('it to be kept', async () => (await lookAtSlip(driver.tab))?.text.startsWith('Kept'));
    await driver.tab.goto(`${pages.origin}/ebbledore/hydrostatic-balance`);
    await until('the passage to be shown', async () => (await driver.tab.run(painted)) === 1);
    expect(await driver.tab.run(() => document.querySelector('plumbline-slip'))).toBeNull();
    await driver.tab.goto(`${pages.origin}/lagoonery/water-waves`);
    await new Promise((resolve) => setTimeout(resolve, 700));
    expect(await driver.tab.run(painted)).toBe(0);
    await driver.tab.gotoDesk('#/course');
    await sees(driver.tab, 'Sites where clips are shown');
    await sees(driver.tab, '127.0.0.1');
  } finally {
    await driver.close();
    await pages.close();
    await rm(folder, { recursive: true, force: true });
  }
});
