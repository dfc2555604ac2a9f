import { accessSync, constants } from 'node:fs';
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

/** The Debian packages still missing for running the extension in both browsers. */
export function missingPackages() {
  const wanted = [
    ['chromium', findChromium()],
    ['firefox-esr', findFirefox()],
    ['xvfb', findProgram('Xvfb')],
    ['xdotool', findProgram('xdotool')],
  ];
  return wanted.filter(([, path]) => !path).map(([name]) => name);
}
