import js from '@eslint/js';
import hooks from 'eslint-plugin-react-hooks';
import globals from 'globals';
import ts from 'typescript-eslint';

/** The domain: one folder per chapter of the method. Pure functions, which know model and nothing above. */
const DOMAIN = ['capture', 'syllabus', 'recall', 'notes', 'papers', 'plan', 'exchange'];

const CLOCK = [
  { name: 'Date', message: 'The domain has no clock: take the moment as an argument (epoch milliseconds).' },
  { name: 'performance', message: 'The domain has no clock: take the moment as an argument.' },
];
const BROWSER = [
  'document',
  'window',
  'navigator',
  'indexedDB',
  'localStorage',
  'fetch',
  'browser',
  'chrome',
].map((name) => ({
  name,
  message: `The domain knows no browser: take what you need of ${name} as an argument.`,
}));

/** Arrows point down only: what may not be imported from where, and what to do about it. */
const barred = (groups, message) => groups.map((group) => ({ group: [group], message }));
const imports = (patterns) => ({ 'no-restricted-imports': ['error', { patterns }] });

const ABOVE_STORE = barred(
  ['#lib/ui/*', '**/ui/*', '**/entrypoints/*'],
  'The store knows no screens: pass a value or a callback down.',
);
const ABOVE_DOMAIN = [
  ...barred(
    ['#lib/ui/*', '#lib/store/*', '**/ui/*', '**/store/*', '**/entrypoints/*'],
    'The domain knows no screens and no store: pass rows in, give values back.',
  ),
  ...barred(
    ['wxt', 'wxt/*', 'idb', 'preact', 'preact/*'],
    'The domain is pure: leave browser, database and screen libraries to the layers above.',
  ),
];

export default ts.config(
  { ignores: ['.output/**', '.wxt/**', 'node_modules/**'] },
  js.configs.recommended,
  ts.configs.strict,
  {
    languageOptions: { globals: { ...globals.browser, ...globals.node } },
    plugins: { 'react-hooks': hooks },
    rules: {
      'react-hooks/rules-of-hooks': 'error',
      'react-hooks/exhaustive-deps': 'error',
      '@typescript-eslint/no-non-null-assertion': 'off',
      '@typescript-eslint/no-unused-vars': ['error', { argsIgnorePattern: '^_', varsIgnorePattern: '^_' }],
      'no-restricted-properties': [
        'error',
        {
          property: 'innerHTML',
          message: 'Build nodes, or render a passage with cleanPassage from lib/capture.',
        },
        { property: 'outerHTML', message: 'Serialise with lib/capture/sanitise.ts.' },
      ],
      'no-restricted-syntax': [
        'error',
        {
          selector: 'JSXAttribute[name.name="dangerouslySetInnerHTML"]',
          message: 'Render a passage with the Passage component of lib/ui, which cleans it.',
        },
        { selector: 'TSEnumDeclaration', message: 'Use a zod enum in lib/model: types come from schemas.' },
      ],
      'no-eval': 'error',
      eqeqeq: ['error', 'always'],
    },
  },
  {
    files: ['lib/**', 'entrypoints/**'],
    rules: {
      'max-lines': ['error', { max: 300 }],
      'max-lines-per-function': ['error', { max: 80, skipBlankLines: true, skipComments: true }],
      complexity: ['error', 15],
      'no-console': 'error',
      'no-restricted-globals': [
        'error',
        { name: 'fetch', message: 'The extension makes no network request.' },
        { name: 'XMLHttpRequest', message: 'The extension makes no network request.' },
        { name: 'WebSocket', message: 'The extension makes no network request.' },
      ],
    },
  },
  {
    files: ['lib/model/**'],
    rules: imports(
      barred(
        [
          '#lib/*',
          '**/store/*',
          '**/ui/*',
          ...DOMAIN.map((d) => `**/${d}/*`),
          'wxt',
          'wxt/*',
          'idb',
          'preact',
          'preact/*',
        ],
        'lib/model knows nothing else: move the code up a layer.',
      ),
    ),
  },
  ...DOMAIN.map((folder) => ({
    files: [`lib/${folder}/**`],
    rules: {
      ...imports(ABOVE_DOMAIN),
      'no-restricted-globals': ['error', ...CLOCK, ...BROWSER],
    },
  })),
  { files: ['lib/store/**'], rules: imports(ABOVE_STORE) },
  {
    files: ['lib/ui/**'],
    rules: imports([
      ...barred(['**/entrypoints/*'], 'Screens are started by entrypoints, not the other way round.'),
      ...barred(['preact/compat'], 'It changes what onChange means on every screen: use preact itself.'),
    ]),
  },
  { files: ['tests/**', '*.config.*'], rules: { 'no-restricted-properties': 'off' } },
);
