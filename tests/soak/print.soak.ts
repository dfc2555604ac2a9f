import { readFile, rm } from 'node:fs/promises';
import { spawnSync } from 'node:child_process';
import type { Campaign } from './campaign.ts';

const REPORT = '.output/print-soak.json';

interface Report {
  numTotalTests: number;
  numFailedTests: number;
  testResults: { assertionResults: { fullName: string; status: string }[] }[];
}

export const campaign: Campaign = {
  name: 'print',
  holds: 'as many printed pages as sides counted, with every word in its place, of every deck',
  async run() {
    await rm(REPORT, { force: true });
    const args = ['run', '--project', 'browser', 'tests/browser/print.test.ts', '--retry', '0'];
    spawnSync('vitest', [...args, '--reporter', 'json', '--outputFile', REPORT], {
      stdio: 'inherit',
      env: { ...process.env, EVERY_DECK: '1' },
    });
    const report = JSON.parse(await readFile(REPORT, 'utf8')) as Report;
    const tests = report.testResults.flatMap(({ assertionResults }) => assertionResults);
    const failed = tests.filter(({ status }) => status !== 'passed').map(({ fullName }) => fullName);
    return [
      {
        where: 'Chromium and Firefox, 6 tests over 42 decks',
        tried: tests.length,
        failed: failed.length,
        examples: failed,
      },
    ];
  },
};
