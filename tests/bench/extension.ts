import { mkdtemp, rm, writeFile } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { build as bundle } from 'vite';
import { build } from 'wxt';

const EMPTY_PAGE = '<!doctype html><meta charset="utf-8"><title>Empty</title><p>Empty</p>\n';

/** Of the build, only what is wrong is worth a line. */
const silent = () => undefined;
const quiet = {
  debug: silent,
  log: silent,
  info: silent,
  success: silent,
  warn: console.warn,
  error: console.error,
  fatal: console.error,
  level: 1,
};

/** A folder for builds and browser profiles, removed at the end of the run. */
let folder: Promise<string> | undefined;
export const benchFolder = (): Promise<string> => (folder ??= mkdtemp(join(tmpdir(), 'plumbline-bench-')));

/** Removes what was built. */
export async function removeBenchFolder(): Promise<void> {
  if (folder) await rm(await folder, { recursive: true, force: true, maxRetries: 5 });
}

let built: Promise<string> | undefined;

/** The folder of the extension as students load it, built on first use; elsewhere than `npm run build` puts it. */
export const builtExtension = (): Promise<string> => (built ??= buildExtension());

async function buildExtension(): Promise<string> {
  const outDir = await benchFolder();
  await build({ browser: 'chrome', outDir, outDirTemplate: 'extension', logger: quiet });
  return join(outDir, 'extension');
}

let prepared: Promise<string> | undefined;

/** The same with two pages more: an empty one, and one that works on the deck with the extension's own code. */
export const preparedExtension = (): Promise<string> => (prepared ??= addPages());

async function addPages(): Promise<string> {
  const extension = await builtExtension();
  await writeFile(join(extension, 'empty.html'), EMPTY_PAGE);
  const root = fileURLToPath(new URL('page', import.meta.url));
  await bundle({
    configFile: false,
    root,
    logLevel: 'warn',
    build: {
      outDir: extension,
      emptyOutDir: false,
      assetsDir: 'bench',
      modulePreload: false,
      target: 'es2024',
      rolldownOptions: { input: join(root, 'bench.html') },
    },
  });
  return extension;
}
