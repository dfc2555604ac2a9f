import { driveChromium } from '#tests/tools/chromium-driver.ts';
import { type BrowserDriver, click, sees, until } from '#tests/tools/driver.ts';
import { driveFirefox } from '#tests/tools/firefox-driver.ts';
import { bringInSyllabus } from '#tests/tools/main-job.ts';
import { rowsIn } from '#tests/tools/rows.ts';
import { Random } from '../bench/random.ts';
import { Words } from '../bench/words.ts';
import type { Campaign, Finding } from './campaign.ts';

const TIMES = 50;
const random = new Random(11);
const words = new Words(random);

/** Types a line, waits for the sign that it is saved, and kills the browser at that moment. */
async function killAfterSaved(driver: BrowserDriver): Promise<Finding> {
  await bringInSyllabus(driver, '1 Waves\n2 Tides');
  const [topic] = await rowsIn(driver.tab, 'topics');
  const finding: Finding = { where: driver.name, tried: 0, failed: 0, examples: [] };
  const typed: string[] = [];
  for (; finding.tried < TIMES; finding.tried++) {
    const { tab } = driver;
    await tab.gotoDesk(`#/condense/${topic!.id}`);
    await sees(tab, 'sides');
    await click(tab, 'Add a line');
    const text = words.text(3 + random.below(12));
    await tab.type(text);
    await until('the saved sign', () =>
      tab.run(() => document.querySelector('.saved-sign')?.textContent === 'Saved'),
    );
    await driver.crash();
    typed.push(text);
    await driver.tab.gotoDesk('#/notes');
    await sees(driver.tab, 'Stands out');
    const kept = (await rowsIn(driver.tab, 'lines'))
      .sort((a, b) => a.order - b.order)
      .map(({ lead, rest }) => `${lead} ${rest}`.trim());
    const lost = typed.filter((one) => !kept.includes(one));
    if (lost.length === 0) continue;
    finding.failed++;
    finding.examples.push(`typed “${lost[0]}”, found “${kept.at(-1) ?? ''}”`);
    // What is lost is counted once.
    typed.splice(0, typed.length, ...kept);
  }
  return finding;
}

export const campaign: Campaign = {
  name: 'notes-crash',
  holds: 'no character of a line is lost when the browser is killed right after “Saved” shows',
  async run() {
    const findings: Finding[] = [];
    for (const drive of [driveChromium, driveFirefox]) {
      const driver = await drive();
      try {
        findings.push(await killAfterSaved(driver));
      } finally {
        await driver.close();
      }
    }
    return findings;
  },
};
