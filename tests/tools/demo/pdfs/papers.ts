import { readFile } from 'node:fs/promises';
import { A4, type PdfPage, type Run, writePdf } from './write-pdf.ts';

/** Lines of one column, one below the other. */
function column(x: number, y: number, lines: readonly string[], size = 11, leading = 14): Run[] {
  return lines.map((text, i) => ({ font: 'Serif', size, x, y: y + i * leading, text }));
}

const run = (font: Run['font'], size: number, x: number, y: number, text: string): Run => ({
  font,
  size,
  x,
  y,
  text,
});

/** The first paragraph of the wave note: its second line ends within a word. */
export const DISPERSION = [
  'Surface gravity waves on water of depth h obey a disper-',
  'sion relation between their angular frequency and their wavenumber. Long',
  'waves travel faster than short ones, so that a storm far away is announced by swell.',
];

/** A hyphen at a line end that belongs to the word, which stands on the page unbroken as well. */
const DEEP = [
  'In the deep-water limit the depth no longer matters. The phase speed of a deep-',
  'water wave grows with the square root of its wavelength.',
];

/** omega squared = g k tanh(kh), as typesetters set it: letters in italics, the two small and raised. */
const equation = (y: number): Run[] => [
  run('Symbol', 12, 220, y, 'w'),
  run('Serif', 8, 228, y - 5, '2'),
  run('Serif', 12, 236, y, ' = '),
  run('Italic', 12, 252, y, 'gk'),
  run('Serif', 12, 266, y, ' tanh('),
  run('Italic', 12, 296, y, 'kh'),
  run('Serif', 12, 309, y, ')'),
];

const wave: [number, number, number, number][] = Array.from({ length: 60 }, (_, i) => {
  const height = (at: number) => 520 - 40 * Math.sin((at / 60) * 4 * Math.PI);
  return [100 + 6 * i, height(i), 106 + 6 * i, height(i + 1)];
});

/** Notes on waves with a title, headings, an equation and a diagram; three pages. */
export const waveNote = (): Buffer =>
  writePdf({
    title: 'Waves on water of any depth',
    author: 'The Lagoonery',
    pages: [
      {
        runs: [
          run('Bold', 20, 72, 90, 'Waves on water of any depth'),
          run('Bold', 14, 72, 130, 'The dispersion relation'),
          ...column(72, 155, DISPERSION),
          ...equation(215),
          ...column(72, 245, DEEP),
          run('Bold', 14, 72, 310, 'What a wave looks like'),
          run('Serif', 9, 100, 590, 'Figure 1. Two wavelengths of a swell.'),
        ],
        strokes: [...wave, [100, 520, 460, 520]],
      },
      {
        runs: [
          run('Bold', 14, 72, 90, 'Group velocity'),
          ...column(72, 115, [
            'Energy travels with the group velocity, which in deep water is half the phase speed.',
            'A group of swell therefore arrives later than its crests would.',
          ]),
          run('Kai', 12, 72, 170, '海の波'),
        ],
      },
      {
        runs: [
          run('Bold', 14, 72, 90, 'Shallow water'),
          ...column(72, 115, [
            'Where the depth is small beside the wavelength, all waves travel at the same speed,',
            'the square root of g times the depth.',
          ]),
        ],
      },
    ],
  });

/** A page in two columns without a title of its own; the left column's last sentence ends in the right one. */
export const twoColumns = (): Buffer =>
  writePdf({
    title: 'untitled',
    pages: [
      {
        runs: [
          run('Sans', 18, 60, 70, 'Tides in two columns'),
          ...column(60, 110, [
            'The tide is a very long wave that the',
            'pull of the Moon and the Sun keeps',
            'going. It rises and falls about twice a',
            'day, since the Earth turns under two',
          ]),
          ...column(320, 110, [
            'bulges of water.',
            'Spring tides come at new and at full',
            'Moon, when both pulls line up.',
          ]),
        ],
      },
    ],
  });

/** A page that is a picture of stripes and nothing else, as a scanner makes it. */
export const scanned = (): Buffer => {
  const [width, height] = [200, 280];
  const grey = Uint8Array.from({ length: width * height }, (_, i) =>
    Math.floor(i / width) % 20 < 3 && i % width > 20 && i % width < 180 ? 40 : 250,
  );
  return writePdf({ pages: [{ image: { width, height, grey } }] });
};

/** A black bar, 32 by 20 of 64 by 64 pixels, as a fax machine packs it (libtiff's tiffcp -c g4). */
const BAR = Buffer.from('fffff350357fffffffffffffe3fffffe002002', 'hex');
/** How much of each page of `packedScans` is dark. */
export const DARK_SHARES = [0.5, (32 * 20) / (64 * 64)];

/** Two pages that are pictures, packed as scanners pack them: a chessboard in JPEG 2000, a bar in CCITT Group 4. */
export const packedScans = async (): Promise<Buffer> => {
  // 64 by 64 pixels in squares of 8 (OpenJPEG's opj_compress -r 4).
  const packed = await readFile(new URL('./checks.jp2', import.meta.url));
  const size = { width: 64, height: 64 };
  return writePdf({
    pages: [
      { image: { ...size, packed, filter: 'JPXDecode' } },
      { image: { ...size, packed: BAR, filter: 'CCITTFaxDecode' } },
    ],
  });
};

/** Pages of different sizes and turns, each with its number on it. */
export const manyPages = (count: number): Buffer =>
  writePdf({
    title: 'A long collection of problems',
    pages: Array.from({ length: count }, (_, i): PdfPage => {
      const turned = i % 7 === 3;
      const size = i % 5 === 4 ? { width: 842, height: 595 } : A4;
      const runs = [
        run('Sans', 16, 72, 90, `Problem ${i + 1}`),
        ...column(72, 120, [`State what changes when the depth of wave number ${i + 1} is doubled.`]),
      ];
      return { ...size, runs, ...(turned ? { rotate: 90 as const } : {}) };
    }),
  });

/** Half a file, as an interrupted download leaves it: its pages are in the half that is missing. */
export const truncated = (): Buffer => {
  const whole = waveNote();
  return whole.subarray(0, whole.indexOf('/Type /Page '));
};

/** The password of locked.pdf: the wave note, locked with 256-bit keys (qpdf 11.3: --encrypt … … 256). */
export const PASSWORD = 'lagoon';
export const lockedFile = new URL('./locked.pdf', import.meta.url);
