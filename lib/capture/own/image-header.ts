export interface ImageHeader {
  /** 'heic' stands for the whole family of HEIF pictures that phones save. */
  type: 'png' | 'jpeg' | 'webp' | 'gif' | 'bmp' | 'avif' | 'heic' | 'tiff';
  /** In pixels; zero where the header does not say it plainly. */
  width: number;
  height: number;
}

/**
 * What a file says of itself in its first bytes, without decoding it: what kind of picture it is, and how large. Null
 * for what is no picture. Read from the published layouts: PNG (W3C), JPEG (ITU T.81), WebP (RFC 9649), GIF89a, and
 * the brands of HEIF (ISO 23008-12).
 */
export function imageHeader(bytes: Uint8Array): ImageHeader | null {
  const view = new DataView(bytes.buffer, bytes.byteOffset, bytes.byteLength);
  const text = (at: number, length: number) => String.fromCharCode(...bytes.subarray(at, at + length));
  try {
    if (text(1, 3) === 'PNG') return { type: 'png', width: view.getUint32(16), height: view.getUint32(20) };
    if (view.getUint16(0) === 0xffd8) return jpegHeader(view);
    if (text(0, 4) === 'RIFF' && text(8, 4) === 'WEBP') return webpHeader(view, text(12, 4));
    if (text(0, 4) === 'GIF8')
      return { type: 'gif', width: view.getUint16(6, true), height: view.getUint16(8, true) };
    if (text(0, 2) === 'BM')
      return {
        type: 'bmp',
        width: Math.abs(view.getInt32(18, true)),
        height: Math.abs(view.getInt32(22, true)),
      };
    if (text(4, 4) === 'ftyp') return brandHeader(text(8, 4));
    if (/^(II\*\0|MM\0\*)/.test(text(0, 4))) return { type: 'tiff', width: 0, height: 0 };
    return null;
  } catch (error) {
    // It ends before its header does.
    if (error instanceof RangeError) return null;
    throw error;
  }
}

/** The frame header, behind segments that may hold a thumbnail of its own. */
function jpegHeader(view: DataView): ImageHeader {
  for (let at = 2; at + 9 < view.byteLength;) {
    if (view.getUint8(at) !== 0xff) break;
    const marker = view.getUint8(at + 1);
    const isFrame = marker >= 0xc0 && marker <= 0xcf && ![0xc4, 0xc8, 0xcc].includes(marker);
    if (isFrame) return { type: 'jpeg', height: view.getUint16(at + 5), width: view.getUint16(at + 7) };
    // Fill bytes, and markers that have no length.
    if (marker === 0xff) at += 1;
    else if (marker === 0x01 || (marker >= 0xd0 && marker <= 0xd8)) at += 2;
    else at += 2 + view.getUint16(at + 2);
  }
  return { type: 'jpeg', width: 0, height: 0 };
}

function webpHeader(view: DataView, chunk: string): ImageHeader {
  const type = 'webp';
  const uint24 = (at: number) => view.getUint16(at, true) + (view.getUint8(at + 2) << 16);
  if (chunk === 'VP8X') return { type, width: uint24(24) + 1, height: uint24(27) + 1 };
  if (chunk === 'VP8 ')
    return { type, width: view.getUint16(26, true) & 0x3fff, height: view.getUint16(28, true) & 0x3fff };
  if (chunk === 'VP8L') {
    const bits = view.getUint32(21, true);
    return { type, width: (bits & 0x3fff) + 1, height: ((bits >>> 14) & 0x3fff) + 1 };
  }
  return { type, width: 0, height: 0 };
}

function brandHeader(brand: string): ImageHeader | null {
  if (/^avi[fs]$/.test(brand)) return { type: 'avif', width: 0, height: 0 };
  return /^(hei[cmsx]|he[vi]c|hev[cmsx]|mif1|msf1)$/.test(brand)
    ? { type: 'heic', width: 0, height: 0 }
    : null;
}
