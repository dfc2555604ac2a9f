// Runs on whatever Node is at hand and needs no packages: it brings in everything the real tools need, then
// hands over to the Node version that the lock file pins.
import { spawnSync } from 'node:child_process';
import { existsSync, readFileSync } from 'node:fs';
import { delimiter, join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { findProgram, missingPackages } from './find-browsers.mjs';

const root = fileURLToPath(new URL('../..', import.meta.url));
const bin = join(root, 'node_modules', '.bin');

const COMMANDS = {
  start: { browsers: true, steps: [['node', 'tests/tools/start.ts']] },
  dev: { steps: [['wxt']] },
  build: {
    steps: [
      ['wxt', 'build'],
      ['wxt', 'build', '-b', 'firefox'],
    ],
  },
  check: {
    steps: [
      ['prettier', '--check', '.'],
      ['tsc', '--noEmit'],
      ['eslint', '.'],
    ],
  },
  test: { browsers: true, pages: true, steps: [['node', 'tests/tools/test.ts']] },
  soak: { browsers: true, pages: true, steps: [['node', 'tests/soak/run.ts']] },
  bench: { browsers: true, pages: true, steps: [['node', 'tests/bench/run.ts']] },
};

/** Runs a program in the project's folder and returns its exit code; `bin` comes first or last on its PATH. */
function run([program, ...args], { own = true } = {}) {
  const others = (process.env.PATH ?? '').split(delimiter).filter((folder) => folder !== bin);
  const env = { ...process.env, PATH: (own ? [bin, ...others] : others).join(delimiter) };
  const file = own ? join(bin, program) : program;
  const result = spawnSync(file, args, { cwd: root, env, stdio: 'inherit' });
  if (result.error) console.error(`${program}: ${result.error.message}`);
  return result.status ?? 1;
}

function stop(message) {
  console.error(message);
  process.exit(1);
}

function readPackages(path) {
  return JSON.parse(readFileSync(join(root, path), 'utf8')).packages;
}

// Compared with npm's own record of what it installed, so that a plain `npm install` counts as well; replacing
// node_modules without need would pull it out from under whatever else is running.
function packagesMatchLock() {
  if (!existsSync(join(root, 'node_modules/.package-lock.json')) || !existsSync(join(bin, 'node')))
    return false;
  const installed = readPackages('node_modules/.package-lock.json');
  return Object.entries(readPackages('package-lock.json')).every(([path, { integrity, optional }]) => {
    return path === '' || (optional && !installed[path]) || installed[path]?.integrity === integrity;
  });
}

function ensurePackages() {
  if (!packagesMatchLock()) {
    console.log('Installing the packages in package-lock.json');
    // Not through node_modules/.bin: npm is about to replace the Node in there.
    if (run(['npm', 'ci', '--no-audit', '--no-fund'], { own: false })) stop('npm ci failed: see above.');
  }
  if (!existsSync(join(root, '.wxt/tsconfig.json')) && run(['wxt', 'prepare'])) stop('wxt prepare failed.');
}

function ensureBrowsers(pages) {
  const missing = missingPackages({ pages });
  if (missing.length === 0) return;
  const asRoot = process.getuid?.() === 0 ? [] : ['sudo', '-n'];
  const allowed = asRoot.length === 0 || spawnSync('sudo', ['-n', 'true']).status === 0;
  if (allowed && findProgram('apt-get')) {
    console.log(`Installing ${missing.join(', ')}`);
    const apt = [...asRoot, 'env', 'DEBIAN_FRONTEND=noninteractive', 'apt-get', '-qq'];
    run([...apt, 'update'], { own: false });
    run([...apt, 'install', '-y', '--no-install-recommends', ...missing], { own: false });
  }
  const left = missingPackages({ pages });
  if (left.length > 0) {
    stop(
      `Please install ${left.join(', ')} (or set CHROMIUM_PATH, FIREFOX_PATH and, for the tests' pages, MPMATH_DOCS), then run this again.`,
    );
  }
}

const [name, ...args] = process.argv.slice(2);
if (!Object.hasOwn(COMMANDS, name ?? '')) stop(`Commands: ${Object.keys(COMMANDS).join(', ')}`);
const { browsers, pages, steps } = COMMANDS[name];
ensurePackages();
if (browsers) ensureBrowsers(pages);
for (const [index, step] of steps.entries()) {
  const status = run(index === steps.length - 1 ? [...step, ...args] : step);
  if (status) process.exit(status);
}
