// Draws the demo video: a deep-water wave and the orbits of the water under it. Run once, by hand, with ffmpeg at hand:
// node tests/tools/demo/make-video.ts
import { spawnSync } from 'node:child_process';
import { mkdtemp, rm } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import sharp from 'sharp';
import { VIDEO, videoColour } from './video.ts';

const { width, height, seconds, rate } = VIDEO;
const PERIOD = 4;
const WAVELENGTH = 200;

function frameAt(time: number): string {
  const phase = (x: number): number => (2 * Math.PI * x) / WAVELENGTH - (2 * Math.PI * time) / PERIOD;
  const surface = Array.from({ length: 65 }, (_, i) => {
    const x = (i * width) / 64;
    return `${x.toFixed(1)},${(70 - 14 * Math.cos(phase(x))).toFixed(1)}`;
  });
  const orbits = [60, 160, 260].flatMap((x) =>
    [80, 105, 130].map((y) => {
      const radius = 14 * Math.exp((-2 * Math.PI * (y - 70)) / WAVELENGTH);
      const [cx, cy] = [x + radius * Math.sin(-phase(x)), y - radius * Math.cos(phase(x))];
      return (
        `<circle cx="${x}" cy="${y}" r="${radius.toFixed(1)}" fill="none" stroke="#ffffff88"/>` +
        `<circle cx="${cx.toFixed(1)}" cy="${cy.toFixed(1)}" r="3" fill="#fdebd3"/>`
      );
    }),
  );
  return `<svg xmlns="http://www.w3.org/2000/svg" width="${width}" height="${height}">
<rect width="100%" height="100%" fill="#dcecf5"/>
<polygon points="0,${height} ${surface.join(' ')} ${width},${height}" fill="#1f6f8b"/>
${orbits.join('')}
<rect width="48" height="48" fill="rgb(${videoColour(time).join()})"/>
<text x="60" y="30" font-family="DejaVu Sans" font-size="16" fill="#17302b">t = ${Math.floor(time)} s</text>
</svg>`;
}

const folder = await mkdtemp(join(tmpdir(), 'plumbline-video-'));
for (let i = 0; i < seconds * rate; i++) {
  await sharp(Buffer.from(frameAt(i / rate)))
    .png()
    .toFile(join(folder, `${String(i).padStart(4, '0')}.png`));
}
const target = fileURLToPath(new URL('./assets/orbits.webm', import.meta.url));
// A key frame each second, so that a player finds a moment quickly.
const options = ['-c:v', 'libvpx', '-b:v', '50k', '-g', String(rate), '-pix_fmt', 'yuv420p', '-an'];
const source = ['-framerate', String(rate), '-i', join(folder, '%04d.png')];
const made = spawnSync('ffmpeg', ['-y', '-loglevel', 'error', ...source, ...options, target], {
  stdio: 'inherit',
});
await rm(folder, { recursive: true });
process.exitCode = made.status ?? 1;
