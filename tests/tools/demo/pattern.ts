import sharp from 'sharp';

/** A picture whose every cell has a colour of its own: it tells whether what was kept is what was on the page. */
export const PATTERN = { columns: 6, rows: 4, cell: 40 } as const;

export type Colour = [red: number, green: number, blue: number];

export const patternColour = (column: number, row: number): Colour => [
  40 * column,
  60 * row,
  200 - 30 * column,
];

/** The pattern as a PNG, one pixel a CSS pixel. */
export async function patternPng(): Promise<Buffer> {
  const { columns, rows, cell } = PATTERN;
  const [width, height] = [columns * cell, rows * cell];
  const pixels = Buffer.alloc(width * height * 3);
  for (let y = 0; y < height; y++) {
    for (let x = 0; x < width; x++) {
      const colour = patternColour(Math.floor(x / cell), Math.floor(y / cell));
      pixels.set(colour, 3 * (y * width + x));
    }
  }
  return sharp(pixels, { raw: { width, height, channels: 3 } })
    .png()
    .toBuffer();
}
