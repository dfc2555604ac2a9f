import { deflateSync } from 'node:zlib';

/** Fonts that every reader of PDFs has or replaces: none of them is in the file. `Kai` needs a table of characters. */
export type Font = 'Serif' | 'Italic' | 'Bold' | 'Sans' | 'Symbol' | 'Kai';

const FONTS: Record<Font, string> = {
  Serif: '<< /Type /Font /Subtype /Type1 /BaseFont /Times-Roman /Encoding /WinAnsiEncoding >>',
  Italic: '<< /Type /Font /Subtype /Type1 /BaseFont /Times-Italic /Encoding /WinAnsiEncoding >>',
  Bold: '<< /Type /Font /Subtype /Type1 /BaseFont /Times-Bold /Encoding /WinAnsiEncoding >>',
  Sans: '<< /Type /Font /Subtype /Type1 /BaseFont /Helvetica /Encoding /WinAnsiEncoding >>',
  Symbol: '<< /Type /Font /Subtype /Type1 /BaseFont /Symbol >>',
  Kai:
    '<< /Type /Font /Subtype /Type0 /BaseFont /HeiseiMin-W3 /Encoding /UniJIS-UTF16-H /DescendantFonts [' +
    '<< /Type /Font /Subtype /CIDFontType0 /BaseFont /HeiseiMin-W3 /DW 1000 ' +
    '/CIDSystemInfo << /Registry (Adobe) /Ordering (Japan1) /Supplement 2 >> ' +
    '/FontDescriptor << /Type /FontDescriptor /FontName /HeiseiMin-W3 /Flags 4 /FontBBox [0 -200 1000 900] ' +
    '/ItalicAngle 0 /Ascent 880 /Descent -120 /CapHeight 700 /StemV 80 >> >>] >>',
};

/** A run of text; y counts from the top of the page, in points. */
export interface Run {
  font: Font;
  size: number;
  x: number;
  y: number;
  text: string;
}

/** Shades of grey, 0 black to 255 white, row by row. */
export interface GreyImage {
  width: number;
  height: number;
  grey: Uint8Array;
}

/** An image as its own format packs it: JPEG 2000, or CCITT Group 4 with black as 0. */
export interface PackedImage {
  width: number;
  height: number;
  packed: Buffer;
  filter: 'JPXDecode' | 'CCITTFaxDecode';
}

export interface PdfPage {
  width?: number;
  height?: number;
  rotate?: 0 | 90 | 180 | 270;
  runs?: Run[];
  /** Lines to draw, each as x, y, x, y from the page's top left corner. */
  strokes?: [number, number, number, number][];
  /** Fills the page. */
  image?: GreyImage | PackedImage;
}

export interface PdfSpec {
  title?: string;
  author?: string;
  pages: PdfPage[];
}

/** A4, in points. */
export const A4 = { width: 595, height: 842 };

/** Writes a PDF 1.7 file. Text is what WinAnsi, Symbol or UTF-16 hold. */
export function writePdf({ title, author, pages }: PdfSpec): Buffer {
  const objects: (string | Buffer)[] = [];
  const add = (object: string | Buffer) => objects.push(object);
  const names = Object.keys(FONTS) as Font[];
  // 1 catalogue, 2 pages, then the fonts; what follows differs.
  add('<< /Type /Catalog /Pages 2 0 R >>');
  add('');
  for (const name of names) add(FONTS[name]);
  const fonts = names.map((name, i) => `/${name} ${i + 3} 0 R`).join(' ');
  const kids: number[] = [];
  for (const page of pages) {
    const { width, height } = { ...A4, ...page };
    const image = page.image && add(imageObject(page.image));
    const content = add(streamObject('', Buffer.from(contentOf(page, width, height), 'latin1')));
    const pictures = image ? `/XObject << /Im ${image} 0 R >>` : '';
    const box = `/MediaBox [0 0 ${width} ${height}] /Rotate ${page.rotate ?? 0}`;
    kids.push(
      add(
        `<< /Type /Page /Parent 2 0 R ${box} /Contents ${content} 0 R ` +
          `/Resources << /Font << ${fonts} >> ${pictures} >> >>`,
      ),
    );
  }
  objects[1] = `<< /Type /Pages /Count ${kids.length} /Kids [${kids.map((kid) => `${kid} 0 R`).join(' ')}] >>`;
  const told = [title && `/Title ${literal(title)}`, author && `/Author ${literal(author)}`].filter(Boolean);
  const info = add(`<< ${told.join(' ')} >>`);
  return fileOf(objects, info);
}

function fileOf(objects: readonly (string | Buffer)[], info: number): Buffer {
  const parts: Buffer[] = [Buffer.from('%PDF-1.7\n%\xe2\xe3\xcf\xd3\n', 'latin1')];
  const offsets: number[] = [];
  let length = parts[0]!.length;
  const put = (part: Buffer) => {
    parts.push(part);
    length += part.length;
  };
  objects.forEach((object, i) => {
    offsets.push(length);
    put(Buffer.concat([Buffer.from(`${i + 1} 0 obj\n`), Buffer.from(object), Buffer.from('\nendobj\n')]));
  });
  const start = length;
  const entries = offsets.map((offset) => `${String(offset).padStart(10, '0')} 00000 n \n`).join('');
  put(Buffer.from(`xref\n0 ${objects.length + 1}\n0000000000 65535 f \n${entries}`));
  const id = '<706c756d626c696e652d64656d6f2d31>';
  put(
    Buffer.from(
      `trailer\n<< /Size ${objects.length + 1} /Root 1 0 R /Info ${info} 0 R /ID [${id} ${id}] >>\n` +
        `startxref\n${start}\n%%EOF\n`,
    ),
  );
  return Buffer.concat(parts);
}

function contentOf({ runs = [], strokes = [], image }: PdfPage, width: number, height: number): string {
  const lines = strokes.map(([x, y, u, v]) => `${x} ${height - y} m ${u} ${height - v} l S`);
  const texts = runs.map(({ font, size, x, y, text }) => {
    const shown =
      font === 'Kai' ? `<${Buffer.from(text, 'utf16le').swap16().toString('hex')}>` : literal(text);
    return `BT /${font} ${size} Tf 1 0 0 1 ${x} ${height - y} Tm ${shown} Tj ET`;
  });
  const picture = image ? `q ${width} 0 0 ${height} 0 0 cm /Im Do Q` : '';
  return [picture, ...lines, ...texts].join('\n');
}

function imageObject(image: GreyImage | PackedImage): Buffer {
  const { width, height } = image;
  const told = `/Type /XObject /Subtype /Image /Width ${width} /Height ${height} /ColorSpace /DeviceGray`;
  if ('grey' in image)
    return streamObject(`${told} /BitsPerComponent 8 /Filter /FlateDecode`, deflateSync(image.grey));
  const bits =
    image.filter === 'JPXDecode'
      ? '/BitsPerComponent 8'
      : `/BitsPerComponent 1 /DecodeParms << /K -1 /Columns ${width} /Rows ${height} >>`;
  return streamObject(`${told} ${bits} /Filter /${image.filter}`, image.packed);
}

function streamObject(dictionary: string, data: Buffer): Buffer {
  const head = `<< ${dictionary} /Length ${data.length} >>\nstream\n`;
  return Buffer.concat([Buffer.from(head), data, Buffer.from('\nendstream')]);
}

/** WinAnsi keeps these elsewhere than Latin-1 does. */
const WIN_ANSI: Readonly<Record<string, number>> = {
  '•': 0x95,
  '–': 0x96,
  '—': 0x97,
  '’': 0x92,
  '“': 0x93,
  '”': 0x94,
};

function literal(text: string): string {
  const bytes = [...text].map((letter) => String.fromCharCode(WIN_ANSI[letter] ?? letter.charCodeAt(0)));
  return `(${bytes.join('').replace(/[\\()]/g, (letter) => `\\${letter}`)})`;
}
