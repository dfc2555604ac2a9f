/**
 * The text of a file: UTF-8, or UTF-16 with a byte order mark, as spreadsheets save "Unicode text"; what is neither is
 * taken for Windows-1252, the usual encoding of older files in Western Europe and America.
 */
export function decodeText(bytes: Uint8Array): string {
  const [first, second] = bytes;
  if (first === 0xff && second === 0xfe) return new TextDecoder('utf-16le').decode(bytes);
  if (first === 0xfe && second === 0xff) return new TextDecoder('utf-16be').decode(bytes);
  try {
    return new TextDecoder('utf-8', { fatal: true }).decode(bytes);
  } catch {
    return new TextDecoder('windows-1252').decode(bytes);
  }
}
