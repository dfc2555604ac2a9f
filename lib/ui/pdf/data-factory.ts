import { browser } from 'wxt/browser';

/** Which module holds a file that pdf.js asks for. */
const MODULES: Readonly<Record<string, (filename: string) => string>> = {
  cMapUrl: () => '/pdfjs/cmaps.js',
  standardFontDataUrl: (filename) => `/pdfjs/fonts/${filename}.js`,
};

/**
 * Where pdf.js finds character tables and fonts: in modules of the extension, since its pages may connect to nothing,
 * not even to its own files.
 */
export class DataFactory {
  async fetch({ kind, filename }: { kind: string; filename: string }): Promise<Uint8Array> {
    const path = MODULES[kind]?.(filename);
    if (path === undefined) throw new Error(`pdf.js asks for ${kind}, which is switched off`);
    const address = browser.runtime.getURL(path as '/desk.html');
    const module = (await import(/* @vite-ignore */ address)) as { default: Record<string, string> };
    const data = module.default[filename];
    if (data === undefined) throw new Error(`pdf.js asks for ${filename}, which is not there`);
    return Uint8Array.from(atob(data), (character) => character.charCodeAt(0));
  }
}
