import { globSync, readFileSync } from 'node:fs';
import { expect, test } from 'vitest';
import messages from '#assets/public/_locales/en/messages.json' with { type: 'json' };

const sources = globSync(['lib/**/*.{ts,tsx}', 'entrypoints/**/*.{ts,tsx}', 'wxt.config.ts']).map((file) => ({
  file,
  text: readFileSync(file, 'utf8'),
}));
const all = sources.map(({ text }) => text).join('\n');
const names = Object.keys(messages);

/** Some names are put together in code: `page${Name}`, `clips${Filter}`, and One and Other for numbers. */
const BUILT = /^(page|clips)[A-Z]\w+$/;

test('every message is used somewhere', () => {
  const unused = names.filter((name) => {
    const base = name.replace(/(One|Other)$/, '');
    return (
      !BUILT.test(name) &&
      !all.includes(`'${name}'`) &&
      !all.includes(`'${base}'`) &&
      !all.includes(`__MSG_${name}__`)
    );
  });
  expect(unused).toEqual([]);
});

test('every error that is thrown has its message', () => {
  const thrown = [...all.matchAll(/StudentError\(\s*'(\w+)'/g)].map((match) => match[1]!);
  expect(thrown.length).toBeGreaterThan(5);
  expect([...new Set(thrown)].filter((name) => !names.includes(name))).toEqual([]);
});

test('numbers have both forms', () => {
  const forms = (end: string) =>
    names.filter((name) => name.endsWith(end)).map((name) => name.slice(0, -end.length));
  expect(forms('One')).toEqual(forms('Other'));
});

test('no text for the student stands in the screens themselves', () => {
  // Words between tags: letters that are not inside braces. Keys and symbols are no words.
  const loose = sources
    .filter(({ file }) => file.endsWith('.tsx'))
    .flatMap(({ file, text }) =>
      [...text.matchAll(/>\s*([A-Za-z][\w ,.'’]+)\s*<\//g)]
        .filter((match) => !text.slice(0, match.index).endsWith('kbd'))
        .map((match) => `${file}: ${match[1]}`),
    );
  expect(loose).toEqual([]);
});
