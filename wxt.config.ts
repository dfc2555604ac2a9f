import { readFileSync, readdirSync } from 'node:fs';
import { createRequire } from 'node:module';
import { basename, dirname, join } from 'node:path';
import { type ResolvedPublicFile, defineConfig } from 'wxt';

// No request can leave an extension page or the worker: connect-src is 'none', and images and fonts come from the
// extension's own files or from bytes already in the deck.
const CONTENT_SECURITY_POLICY = [
  "default-src 'none'",
  "script-src 'self'",
  "style-src 'self'",
  "img-src 'self' data: blob:",
  "font-src 'self'",
  "connect-src 'none'",
  "object-src 'none'",
  "base-uri 'none'",
  "form-action 'none'",
  "frame-ancestors 'none'",
].join('; ');

const PDFJS = dirname(createRequire(import.meta.url).resolve('pdfjs-dist/package.json'));

/**
 * What pdf.js loads when a file needs it. Our pages may connect to nothing, so all of it comes as scripts: the worker,
 * the decoder of JPEG 2000 without WebAssembly, and as modules the tables of Chinese, Japanese and Korean character
 * codes and the fonts that stand in for those that a file names and does not hold.
 */
function pdfAssets(): ResolvedPublicFile[] {
  const copied = (from: string, to = basename(from)) => ({
    absoluteSrc: join(PDFJS, from),
    relativeDest: `pdfjs/${to}`,
  });
  const asModule = (to: string, files: string[]) => {
    const contents = files.map((file) => [basename(file), readFileSync(join(PDFJS, file), 'base64')]);
    const text = `export default ${JSON.stringify(Object.fromEntries(contents))};\n`;
    return { contents: text, relativeDest: `pdfjs/${to}.js` };
  };
  const filesIn = (folder: string, end: RegExp) =>
    readdirSync(join(PDFJS, folder))
      .filter((name) => end.test(name))
      .map((name) => `${folder}/${name}`);
  return [
    copied('legacy/build/pdf.worker.min.mjs', 'worker.mjs'),
    copied('wasm/openjpeg_nowasm_fallback.js'),
    asModule('cmaps', filesIn('cmaps', /\.bcmap$/)),
    ...filesIn('standard_fonts', /\.(pfb|ttf)$/).map((file) => asModule(`fonts/${basename(file)}`, [file])),
    copied('LICENSE'),
    copied('cmaps/LICENSE', 'LICENSE_CMAPS'),
    copied('wasm/LICENSE_OPENJPEG'),
    ...filesIn('standard_fonts', /^LICENSE/).map((file) => copied(file)),
  ];
}

export default defineConfig({
  manifestVersion: 3,
  imports: false,
  publicDir: 'assets/public',
  outDir: '.output',
  hooks: { 'build:publicAssets': (_wxt, files) => void files.push(...pdfAssets()) },
  manifest: ({ browser, mode }) => ({
    name: '__MSG_extName__',
    description: '__MSG_extDescription__',
    default_locale: 'en',
    minimum_chrome_version: browser === 'firefox' ? undefined : '127',
    permissions: ['activeTab', 'scripting', 'storage', 'unlimitedStorage', 'contextMenus'],
    optional_host_permissions: ['http://*/*', 'https://*/*'],
    // Left to the development server's needs while developing; shut in every build that a student loads.
    ...(mode === 'production'
      ? { content_security_policy: { extension_pages: CONTENT_SECURITY_POLICY } }
      : {}),
    commands: {
      clip: { suggested_key: { default: 'Alt+K' }, description: '__MSG_commandClip__' },
      _execute_action: {
        // Firefox on Linux keeps Ctrl+Shift+Y for itself.
        suggested_key: { default: browser === 'firefox' ? 'Alt+L' : 'Ctrl+Shift+Y' },
        description: '__MSG_commandPopup__',
      },
    },
    action: { default_title: '__MSG_actionTitle__' },
    icons: { 16: 'icon/16.png', 32: 'icon/32.png', 48: 'icon/48.png', 128: 'icon/128.png' },
    ...(browser === 'firefox'
      ? {
          browser_specific_settings: {
            gecko: {
              id: 'plumbline@plumbline.invalid',
              strict_min_version: '140.0',
              data_collection_permissions: { required: ['none'] },
            },
          },
        }
      : {}),
  }),
  vite: () => ({
    // Styles are for the browsers that the manifest asks for; else every colour is doubled for older ones.
    build: {
      modulePreload: false,
      target: 'es2024',
      cssTarget: ['chrome127', 'firefox140'],
    },
    oxc: { jsx: { runtime: 'automatic', importSource: 'preact' } },
  }),
});
