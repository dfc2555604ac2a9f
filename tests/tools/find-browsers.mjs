import { accessSync, constants, existsSync } from 'node:fs';
import { delimiter, join } from 'node:path';

function isProgram(path) {
  try {
    accessSync(path, constants.X_OK);
    return true;
  } catch {
    return false;
  }
}

/** The full path of the first of these programs that PATH knows, or undefined. */
export function findProgram(...names) {
  const folders = (process.env.PATH ?? '').split(delimiter);
  return names.flatMap((name) => folders.map((folder) => join(folder, name))).find(isProgram);
}

/** Where Chromium is: CHROMIUM_PATH when set, else looked up on PATH. */
export function findChromium() {
  return process.env.CHROMIUM_PATH ?? findProgram('chromium', 'chromium-browser');
}

/** Where Firefox is: FIREFOX_PATH when set, else looked up on PATH. */
export function findFirefox() {
  return process.env.FIREFOX_PATH ?? findProgram('firefox-esr', 'firefox');
}

/** Real pages for the tests, from Debian's python-mpmath-doc or, elsewhere, a copy of the folder that it installs. */
export const PAGES = process.env.MPMATH_DOCS ?? '/usr/share/doc/python-mpmath-doc/html';

/** The Debian packages still missing for running the extension in both browsers, and with real pages for tests. */
export function missingPackages({ pages = false } = {}) {
  const wanted = [
    ['chromium', findChromium()],
    ['firefox-esr', findFirefox()],
    ['xvfb', findProgram('Xvfb')],
    ['xdotool', findProgram('xdotool')],
    ...(pages ? [['python-mpmath-doc', existsSync(PAGES)]] : []),
  ];
  return wanted.filter(([, isThere]) => !isThere).map(([name]) => name);
}
