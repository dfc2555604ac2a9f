import { mkdtemp, readFile, readdir, rm } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import type { AnyDriver } from './demo/pdfs/reader.ts';
import { until } from './driver.ts';

export interface Download {
  name: string;
  text: string;
}

/** Does something that saves a file, and gives what the browser saved, under the name that it gave it. */
export async function downloadOf(driver: AnyDriver, act: () => Promise<void>): Promise<Download> {
  if (!('firefox' in driver)) {
    const [download] = await Promise.all([driver.page.waitForEvent('download'), act()]);
    return { name: download.suggestedFilename(), text: await readFile(await download.path(), 'utf8') };
  }
  const folder = await mkdtemp(join(tmpdir(), 'plumbline-downloads-'));
  try {
    await driver.firefox.inChrome(() =>
      driver.firefox.run(
        `Services.prefs.setIntPref('browser.download.folderList', 2);
         Services.prefs.setBoolPref('browser.download.alwaysOpenPanel', false);
         Services.prefs.setStringPref('browser.download.dir', ${JSON.stringify(folder)});`,
      ),
    );
    await act();
    return await until('the file to be saved', async () => {
      const [name, ...others] = await readdir(folder);
      // While it is written, another file stands beside it.
      if (!name || others.length > 0 || name.endsWith('.part')) return null;
      const text = await readFile(join(folder, name), 'utf8');
      return text === '' ? null : { name, text };
    });
  } finally {
    await rm(folder, { recursive: true, force: true });
  }
}
