import { execFileSync } from 'node:child_process';
import { mkdtempSync, readdirSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';

/**
 * Brings a package of Debian's, of the version named, into a folder of its own, and unpacks it there without
 * installing anything. Needs apt-get and dpkg.
 * @returns what `read` makes of the unpacked folder; the folder is gone afterwards
 */
export function withDebianPackage<T>(name: string, version: string, read: (folder: string) => T): T {
  const folder = mkdtempSync(join(tmpdir(), 'match-data-'));
  try {
    execFileSync('apt-get', ['download', '--quiet', `${name}=${version}`], {
      cwd: folder,
      stdio: ['ignore', 'ignore', 'inherit'],
    });
    const file = readdirSync(folder).find((entry) => entry.endsWith('.deb'));
    if (!file) throw new Error(`apt-get brought no ${name}`);
    const unpacked = join(folder, 'unpacked');
    execFileSync('dpkg', ['--extract', join(folder, file), unpacked]);
    return read(unpacked);
  } finally {
    rmSync(folder, { recursive: true, force: true });
  }
}
