import { beforeAll, describe, expect, test } from 'vitest';
import { driveChromium } from '#tests/tools/chromium-driver.ts';
import { startLearningPages } from '#tests/tools/demo/server.ts';
import { driveFirefox } from '#tests/tools/firefox-driver.ts';
import { type ProxiedRequest, startLoggingProxy } from '#tests/tools/logging-proxy.ts';
import { type JobReport, doMainJob } from '#tests/tools/main-job.ts';

// The whole job with every request of the whole browser going through a proxy of ours, which forwards to this machine
// only and writes down the rest.
describe.each([
  ['Chromium', driveChromium],
  ['Firefox', driveFirefox],
] as const)('the main job in %s', (_name, drive) => {
  let report: JobReport;
  let forwarded: ProxiedRequest[];
  let refused: ProxiedRequest[];
  let origin: string;

  beforeAll(async () => {
    const [pages, proxy] = await Promise.all([startLearningPages(), startLoggingProxy()]);
    ({ origin } = pages);
    const driver = await drive({ proxyPort: proxy.port });
    try {
      report = await doMainJob(driver, { origin, pages: 4 });
    } finally {
      await driver.close();
      ({ forwarded, refused } = proxy);
      await Promise.all([pages.close(), proxy.close()]);
    }
  }, 180_000);

  test('clips are kept from pages with MathML, KaTeX and MathJax, each formula once', () => {
    expect(report.clips.map(({ markup, formulas }) => [markup, formulas])).toEqual([
      ['mathml', 6],
      ['katex', 8],
      ['mathjax-chtml', 5],
      ['mathjax-svg', 8],
    ]);
  });

  test('topics are suggested, and the right one is among the first five', () => {
    for (const { suggested, kept } of report.clips) expect(suggested).toContainEqual(kept);
  });

  test('the gaps shrink and stay so after a restart', () => {
    expect(report.topics).toBe(33);
    expect(report.gaps).toEqual({ before: 26, after: 23, restarted: 23 });
  });

  test('the round ends with its marks by topic', () => {
    expect(report.round.marks).toMatch(/^\d+(\.5)? of \d+ marks$/);
    expect(report.round.topics.length).toBeGreaterThan(1);
  });

  test('nothing was asked of the network but the learning pages, by the student', () => {
    expect(refused).toEqual([]);
    expect(forwarded.length).toBeGreaterThan(0);
    expect(forwarded.filter(({ url }) => !url.includes(new URL(origin).host))).toEqual([]);
  });
});
