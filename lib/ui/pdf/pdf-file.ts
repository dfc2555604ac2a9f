import type { Source } from '#lib/model/source.ts';

/** A PDF as it came in. */
export interface PdfFile {
  name: string;
  bytes: Blob;
  /** The address it was taken from, or the name by its contents: what its source is known by. */
  url: string;
}

/** A picked or dropped file, named by its contents. */
export async function pickedFile(file: File): Promise<PdfFile> {
  // A copy, since the file on the disk may change or go while it is read here.
  const bytes = new Blob([await file.arrayBuffer()], { type: 'application/pdf' });
  return { name: file.name, bytes, url: await nameByContents(bytes) };
}

/** RFC 6920: `ni:///sha-256;` and the digest in base64url. */
export async function nameByContents(bytes: Blob): Promise<string> {
  const digest = new Uint8Array(await crypto.subtle.digest('SHA-256', await bytes.arrayBuffer()));
  const base64 = btoa(String.fromCharCode(...digest));
  return `ni:///sha-256;${base64.replaceAll('+', '-').replaceAll('/', '_').replace(/=+$/, '')}`;
}

/** The name at the end of an address, or its host. */
export function nameOfAddress(address: string): string {
  const { pathname, hostname } = new URL(address);
  const last = pathname.split('/').filter(Boolean).at(-1) ?? '';
  try {
    return decodeURIComponent(last) || hostname;
  } catch {
    return last || hostname;
  }
}

/** A number of bytes as it is told: "7 kB", "1.4 MB". */
export function sizeText(bytes: number): string {
  const [value, unit] = bytes < 1_000_000 ? [bytes / 1000, 'kilobyte'] : [bytes / 1_000_000, 'megabyte'];
  return value.toLocaleString(undefined, { style: 'unit', unit, maximumFractionDigits: value < 10 ? 1 : 0 });
}

/** A PDF's source, as far as it is known before it is kept. */
export type PdfSource = Omit<Source, 'id' | 'createdAt' | 'changedAt'>;
