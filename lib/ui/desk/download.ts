/** How long a file's bytes are kept for the browser to fetch, in milliseconds: it starts at once. */
const FETCH_MS = 60_000;

/** Hands a text to the browser as a file to be saved. Nothing leaves the device. */
export function downloadText(name: string, type: string, text: string): void {
  const url = URL.createObjectURL(new Blob([text], { type }));
  const link = document.createElement('a');
  link.href = url;
  link.download = name;
  link.click();
  setTimeout(() => URL.revokeObjectURL(url), FETCH_MS);
}
