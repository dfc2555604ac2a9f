import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { driveChromium } from '#tests/tools/chromium-driver.ts';
import { type BrowserDriver, click, fill, sees, textOf, until } from '#tests/tools/driver.ts';
import { driveFirefox } from '#tests/tools/firefox-driver.ts';
import { bringInSyllabus } from '#tests/tools/main-job.ts';

describe.each([
  ['Chromium', driveChromium],
  ['Firefox', driveFirefox],
] as const)('syllabuses in %s', (_name, drive) => {
  let driver: BrowserDriver;
  beforeAll(async () => {
    driver = await drive();
    await bringInSyllabus(driver, '1 Waves\n1.1 Swell\n2 Tides');
  });
  afterAll(async () => driver?.close());

  const read = async (text: string) => {
    await driver.tab.gotoDesk('#/syllabus');
    await sees(driver.tab, 'Bring in a newer version');
    await fill(driver.tab, 'Syllabus', text);
    await click(driver.tab, 'Read it');
  };
  const stillSaved = async () => {
    await driver.tab.gotoDesk('#/syllabus');
    await sees(driver.tab, '1.1 Swell');
    return /(\d+) topics/.exec(await textOf(driver.tab))![1];
  };

  test('of nothing but spaces: a message', async () => {
    await read('   \n\t\n');
    await sees(driver.tab, 'There is no syllabus here yet');
  });

  test('of binary junk: a message, and the saved one stays', async () => {
    await read(
      Array.from({ length: 3000 }, (_, i) => String.fromCharCode(1 + ((i * 7) % 8), 0xfffd)).join(''),
    );
    await sees(driver.tab, 'This is not plain text');
    expect(await stillSaved()).toBe('3');
  });

  test('of one line: one topic, saved only when the student says so', async () => {
    await read('Waves and tides');
    await sees(driver.tab, '1 topic, 0 statements');
    expect(await stillSaved()).toBe('3');
  });

  test('of 2,000 lines: a tree that can be put right, and all of it is saved', async () => {
    const lines = Array.from({ length: 400 }, (_, i) => [
      `${i + 1} Chapter ${i + 1}`,
      `\t${i + 1}.1 First part`,
      `\t\tState what is meant by number ${i + 1}.`,
      `\t${i + 1}.2 Second part`,
      `\t\tExplain number ${i + 1}.`,
    ]);
    await read(lines.flat().join('\n'));
    await sees(driver.tab, '1200 topics, 800 statements');
    await click(driver.tab, 'Save the syllabus');
    await sees(driver.tab, 'Saved: 1200 topics.');
    await driver.tab.gotoDesk('#/coverage');
    await sees(driver.tab, '800 of 800 topics have nothing yet');
    await until('the first rows', () =>
      driver.tab.run(() => document.querySelectorAll('.coverage tbody tr').length === 60),
    );
    await click(driver.tab, 'Show all 800 topics');
    await until('every row', () =>
      driver.tab.run(() => document.querySelectorAll('.coverage tbody tr').length === 800),
    );
  });
});
