import { execFile, spawn } from 'node:child_process';
import { once } from 'node:events';
import type { Readable } from 'node:stream';
import { promisify } from 'node:util';

const execute = promisify(execFile);

/** A virtual screen with a real keyboard and mouse. It has no window manager, so windows are focused by hand. */
export interface VirtualScreen {
  /** For the DISPLAY variable, such as `:1`. */
  display: string;
  /** Presses keys in the window in focus, in xdotool's notation: `alt+k`, `Return`. */
  press(...keys: string[]): Promise<void>;
  /** Clicks the first mouse button at a point of the screen. */
  click(x: number, y: number): Promise<void>;
  /** Waits for a visible window of this class (`chromium`, `firefox-esr`) and gives it the keyboard. */
  focus(windowClass: string): Promise<void>;
  close(): Promise<void>;
}

/** Starts Xvfb on a free display. */
export async function startXvfb(size = '1280x800'): Promise<VirtualScreen> {
  const args = ['-displayfd', '3', '-screen', '0', `${size}x24`, '-nolisten', 'tcp'];
  const server = spawn('Xvfb', args, { stdio: ['ignore', 'ignore', 'ignore', 'pipe'] });
  const display = await new Promise<string>((resolve, reject) => {
    server.once('error', reject);
    server.once('exit', (code) => reject(new Error(`Xvfb ended with code ${code}`)));
    (server.stdio[3] as Readable).once('data', (line) => resolve(`:${String(line).trim()}`));
  });
  const xdotool = async (...command: string[]): Promise<string> => {
    const env = { ...process.env, DISPLAY: display };
    return (await execute('xdotool', command, { env, timeout: 15_000 })).stdout.trim();
  };
  return {
    display,
    async press(...keys) {
      await xdotool('key', ...keys);
    },
    async click(x, y) {
      await xdotool('mousemove', String(x), String(y), 'click', '1');
    },
    async focus(windowClass) {
      const windows = await xdotool('search', '--sync', '--onlyvisible', '--class', windowClass);
      await xdotool('windowfocus', '--sync', windows.split('\n').at(-1)!);
    },
    async close() {
      if (server.exitCode !== null) return;
      const ended = once(server, 'exit');
      server.kill();
      await ended;
    },
  };
}
