// Runs the long campaigns, all or those whose name begins with a word, and says whether each held.
import { readdir, writeFile } from 'node:fs/promises';
import { parseArgs } from 'node:util';
import { spawnSync } from 'node:child_process';
import { machineInWords } from '../bench/report.ts';
import type { Campaign, Finding } from './campaign.ts';

const { values, positionals } = parseArgs({ options: { docs: { type: 'boolean' } }, allowPositionals: true });
const wanted = positionals[0] ?? '';

for (const args of [['build'], ['build', '-b', 'firefox']])
  if (spawnSync('wxt', args, { stdio: 'inherit' }).status !== 0) process.exit(1);

const files = (await readdir(import.meta.dirname)).filter((file) => file.endsWith('.soak.ts')).sort();
const chosen = files.filter((file) => file.startsWith(wanted));
if (chosen.length === 0) {
  console.error(`No campaign begins with ${wanted}. There are: ${files.join(', ')}`);
  process.exit(1);
}

const rows: string[] = [];
let failed = 0;
for (const file of chosen) {
  const { campaign } = (await import(`./${file}`)) as { campaign: Campaign };
  console.log(`${campaign.name}: ${campaign.holds}`);
  const start = Date.now();
  const findings = await campaign.run();
  const seconds = Math.round((Date.now() - start) / 1000);
  for (const one of findings) {
    failed += one.failed;
    console.log(`  ${told(one)}`);
    for (const example of one.examples) console.error(`    ${example}`);
    rows.push(`| ${campaign.name} | ${campaign.holds} | ${told(one)} | ${seconds} s in all |`);
  }
}

if (values.docs) await writeFile('docs/soak.md', page(rows));
process.exit(failed > 0 ? 1 : 0);

function told({ where, tried, failed }: Finding): string {
  return `${where}: held ${tried - failed} times out of ${tried}`;
}

function page(all: readonly string[]): string {
  const day = new Date().toISOString().slice(0, 10);
  return [
    '# Long campaigns',
    '',
    `What \`npm run soak -- --docs\` found on ${day}. ${machineInWords()}.`,
    '',
    '| campaign | what must hold | found | time |',
    '| --- | --- | --- | --- |',
    ...all,
    '',
  ].join('\n');
}
