// Runs the bench files, all or those of one folder of lib, and says whether the goals are met.
import { mkdir, readdir, writeFile } from 'node:fs/promises';
import { parseArgs } from 'node:util';
import { removeBenchFolder } from './extension.ts';
import type { Figure, Figures } from './figure.ts';
import { docsPage, machineInWords, table } from './report.ts';

const { values, positionals } = parseArgs({ options: { docs: { type: 'boolean' } }, allowPositionals: true });
const wanted = positionals[0] ?? '';

const files = (await readdir(import.meta.dirname)).filter((file) => file.endsWith('.bench.ts')).sort();
/** A folder's figures are in `capture.bench.ts` and in files like `capture-find.bench.ts`. */
const chosen = files.filter((file) => {
  const folder = `${/^[a-z]+/.exec(file)![0]}/`;
  return folder.startsWith(wanted) || wanted.startsWith(folder);
});

async function figuresIn(file: string): Promise<Figure[]> {
  console.log(`Measuring ${file.replace('.bench.ts', '')}`);
  const { figures } = (await import(`./${file}`)) as { figures: Figures };
  return typeof figures === 'function' ? figures() : figures;
}

const figures: Figure[] = [];
try {
  for (const file of chosen) figures.push(...(await figuresIn(file)));
} finally {
  await removeBenchFolder();
}
const shown = figures.filter(({ name }) => name.startsWith(wanted));
if (shown.length === 0) {
  console.error(`No figure starts with ${wanted}. Files: ${files.join(', ')}`);
  process.exit(1);
}

await mkdir('.output', { recursive: true });
await writeFile('.output/bench.json', `${JSON.stringify(shown, null, 2)}\n`);
console.log(`\n${table(shown)}\n\n${machineInWords()}`);
if (values.docs) {
  await writeFile('docs/benchmarks.md', docsPage(shown));
  console.log('Written to docs/benchmarks.md');
}
const missed = shown.filter(({ met }) => met === false);
for (const { name, value, unit, goal } of missed)
  console.error(`Missed: ${name} is ${value} ${unit}, goal ${goal}`);
process.exit(missed.length > 0 ? 1 : 0);
