import { defineConfig } from 'wxt';

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

export default defineConfig({
  manifestVersion: 3,
  imports: false,
  publicDir: 'assets/public',
  outDir: '.output',
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
    build: { modulePreload: false, target: 'es2024' },
    oxc: { jsx: { runtime: 'automatic', importSource: 'preact' } },
  }),
});
