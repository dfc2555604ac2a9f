// Runs every check of the project, counts each as one test, and ends with the totals on the last line.
import { spawn } from 'node:child_process';
import { once } from 'node:events';
import { readFile, rm } from 'node:fs/promises';
import { type Totals, countReport, sum } from './test-report.ts';

const REPORT = '.output/vitest.json';

interface Step {
  name: string;
  command: string[];
}

interface Outcome {
  step: Step;
  ok: boolean;
  output: string;
  seconds: number;
}

// Steps of one group run at the same time. The builds come later: they write the types that the checks read.
const GROUPS: Step[][] = [
  [
    { name: 'types', command: ['tsc', '--noEmit'] },
    { name: 'lint', command: ['eslint', '.', '--max-warnings', '0'] },
    { name: 'format', command: ['prettier', '--check', '.'] },
  ],
  [
    { name: 'build for Chromium', command: ['wxt', 'build'] },
    { name: 'build for Firefox', command: ['wxt', 'build', '-b', 'firefox'] },
  ],
];

async function runStep(step: Step): Promise<Outcome> {
  const started = Date.now();
  const [program, ...args] = step.command;
  const child = spawn(program!, args, { stdio: ['ignore', 'pipe', 'pipe'] });
  let output = '';
  child.stdout.on('data', (chunk) => (output += String(chunk)));
  child.stderr.on('data', (chunk) => (output += String(chunk)));
  const ok = await once(child, 'close').then(
    ([code]) => code === 0,
    (error: Error) => {
      output += error.message;
      return false;
    },
  );
  return { step, ok, output, seconds: (Date.now() - started) / 1000 };
}

function print({ step, ok, output, seconds }: Outcome): void {
  console.log(`${ok ? 'ok    ' : 'FAILED'} ${step.name} (${seconds.toFixed(1)} s)`);
  if (!ok) console.log(`\n$ ${step.command.join(' ')}\n${output.trimEnd()}\n`);
}

async function runGroup(steps: Step[]): Promise<Totals> {
  const running = steps.map(runStep);
  const totals: Totals = { passed: 0, failed: 0, skipped: 0 };
  // Printed in the order of the list, each in one piece.
  for (const result of running) {
    const outcome = await result;
    print(outcome);
    totals[outcome.ok ? 'passed' : 'failed'] += 1;
  }
  return totals;
}

async function runVitest(filters: string[]): Promise<Totals> {
  await rm(REPORT, { force: true });
  const reporters = ['--reporter=default', '--reporter=json', `--outputFile.json=${REPORT}`];
  const child = spawn('vitest', ['run', ...reporters, ...filters], { stdio: 'inherit' });
  const code = await once(child, 'close').then(
    ([status]) => status as number | null,
    (error: Error) => {
      console.log(error.message);
      return null;
    },
  );
  const report = await readFile(REPORT, 'utf8').catch(() => undefined);
  return countReport(report, code);
}

let totals: Totals = { passed: 0, failed: 0, skipped: 0 };
for (const group of GROUPS) totals = sum(totals, await runGroup(group));
totals = sum(totals, await runVitest(process.argv.slice(2)));
process.exitCode = totals.failed > 0 ? 1 : 0;
console.log(`${totals.passed} passed, ${totals.failed} failed, ${totals.skipped} skipped`);
