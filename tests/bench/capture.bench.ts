import { stat } from 'node:fs/promises';
import { join } from 'node:path';
import { builtExtension } from './extension.ts';
import { figure } from './figure.ts';

/** The script that is put into a page when the student clips. kB = 1000 bytes. */
export async function figures() {
  const { size } = await stat(join(await builtExtension(), 'clip.js'));
  return [figure({ name: 'capture/clip-script-kb', value: size / 1000, unit: 'kB', goal: { atMost: 60 } })];
}
