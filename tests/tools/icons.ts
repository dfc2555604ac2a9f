// Draws the toolbar icon in the sizes that browsers ask for, from assets/icon.svg. Run: node tests/tools/icons.ts
import sharp from 'sharp';

const root = new URL('../../', import.meta.url).pathname;
for (const size of [16, 32, 48, 128])
  await sharp(`${root}assets/icon.svg`, { density: 600 })
    .resize(size)
    .png()
    .toFile(`${root}assets/public/icon/${size}.png`);
