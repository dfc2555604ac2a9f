import { ESLint } from 'eslint';
import { expect, test } from 'vitest';

const eslint = new ESLint();

async function rulesBroken(filePath: string, code: string): Promise<(string | null)[]> {
  const [result] = await eslint.lintText(code, { filePath });
  return result!.messages.map(({ ruleId }) => ruleId);
}

// Each line is something that the layers forbid, and the rule that must say so.
test.each([
  ['lib/model/x.ts', "import { a } from '#lib/store/read.ts';\na();", 'no-restricted-imports'],
  ['lib/model/x.ts', "import { a } from '../recall/memory.ts';\na();", 'no-restricted-imports'],
  ['lib/recall/x.ts', "import { a } from '#lib/store/read.ts';\na();", 'no-restricted-imports'],
  ['lib/recall/x.ts', "import { a } from '#lib/store/actions/clips.ts';\na();", 'no-restricted-imports'],
  ['lib/recall/x.ts', "import { a } from '#lib/ui/text.ts';\na();", 'no-restricted-imports'],
  ['lib/syllabus/x.ts', "import { openDB } from 'idb';\nopenDB('x');", 'no-restricted-imports'],
  [
    'lib/syllabus/match/x.ts',
    "import { browser } from 'wxt/browser';\nbrowser.tabs;",
    'no-restricted-imports',
  ],
  ['lib/plan/x.ts', 'export const now = () => Date.now();', 'no-restricted-globals'],
  ['lib/capture/x.ts', 'export const title = () => document.title;', 'no-restricted-globals'],
  ['lib/store/x.ts', "import { a } from '#lib/ui/text.ts';\na();", 'no-restricted-imports'],
  [
    'lib/ui/x.ts',
    "import { a } from '../../entrypoints/background/handlers.ts';\na();",
    'no-restricted-imports',
  ],
  ['lib/store/x.ts', "export const ask = () => fetch('http://127.0.0.1/');", 'no-restricted-globals'],
  ['lib/recall/x.ts', "export const ask = () => fetch('http://127.0.0.1/');", 'no-restricted-globals'],
  ['entrypoints/x.ts', "document.body.innerHTML = '<p>';", 'no-restricted-properties'],
  ['entrypoints/x.ts', '\n'.repeat(300) + 'export const last = 1;', 'max-lines'],
])('%s: %s', async (file, code, rule) => {
  expect(await rulesBroken(file, code)).toContain(rule);
});

// What the layers allow: the rules must not cry wolf.
test.each([
  ['lib/recall/x.ts', "import { a } from '#lib/model/item.ts';\na();"],
  ['lib/store/x.ts', "import { a } from '#lib/model/item.ts';\nimport { openDB } from 'idb';\na(openDB);"],
  [
    'lib/ui/x.ts',
    "import { a } from '#lib/store/read.ts';\nimport { b } from '#lib/recall/memory.ts';\na(b, Date.now());",
  ],
  ['entrypoints/x.ts', "import { a } from '#lib/ui/text.ts';\na();"],
])('%s: %s is allowed', async (file, code) => {
  expect(await rulesBroken(file, code)).toEqual([]);
});
