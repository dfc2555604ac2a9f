/** As many bytes as one call takes as arguments. */
const CHUNK = 0x8000;

/** Bytes as a data URL. */
export async function dataUrlOf(blob: Blob): Promise<string> {
  const bytes = new Uint8Array(await blob.arrayBuffer());
  const parts: string[] = [];
  for (let at = 0; at < bytes.length; at += CHUNK)
    parts.push(String.fromCharCode(...bytes.subarray(at, at + CHUNK)));
  return `data:${blob.type};base64,${btoa(parts.join(''))}`;
}

/** The bytes of a data URL in base64, with its type; null where it is none. */
export function blobOfDataUrl(dataUrl: string): Blob | null {
  const found = /^data:([\w.+/-]+)(?:;[^,;]*)*;base64,/.exec(dataUrl);
  if (!found) return null;
  try {
    const characters = atob(dataUrl.slice(found[0].length));
    const bytes = Uint8Array.from(characters, (character) => character.charCodeAt(0));
    return new Blob([bytes], { type: found[1]! });
  } catch {
    return null;
  }
}
