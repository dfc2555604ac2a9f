// Builds the extension, serves the learning pages, and opens a browser on them with the demo course; without a
// display, or with --headless, carries out the main job itself and says what it did.
import { spawnSync } from 'node:child_process';
import { mkdir, readFile, writeFile } from 'node:fs/promises';
import { type ChromiumDriver, driveChromium } from './chromium-driver.ts';
import { syllabusFile } from './demo/pages.ts';
import { startLearningPages } from './demo/server.ts';
import { bringInSyllabus, doMainJob } from './main-job.ts';

const PICTURES = '.output/demo';
const MARKUPS = ['mathml', 'katex', 'mathjax-chtml', 'mathjax-svg'];

function build(): void {
  console.log('Building the extension');
  const { status } = spawnSync('wxt', ['build'], { stdio: ['ignore', 'ignore', 'inherit'] });
  if (status !== 0) throw new Error('The build failed: see above.');
}

async function runHeadless(driver: ChromiumDriver, origin: string): Promise<void> {
  await mkdir(PICTURES, { recursive: true });
  const report = await doMainJob(driver, {
    origin,
    pages: 6,
    say: (line) => console.log(line),
    picture: (name, png) => writeFile(`${PICTURES}/${name}.png`, png),
  });
  const missing = MARKUPS.filter((markup) => !report.clips.some((clip) => clip.markup === markup));
  if (missing.length > 0) throw new Error(`No clip was kept from a page with ${missing.join(', ')}`);
  console.log(
    `Done: ${report.clips.length} clips, ${report.questions} questions, topics with nothing ` +
      `${report.gaps.before} before and ${report.gaps.after} after, round ${report.round.marks}.`,
  );
  console.log(`Pictures of each screen are in ${PICTURES}/`);
}

async function openForPerson(driver: ChromiumDriver, origin: string): Promise<void> {
  await bringInSyllabus(driver, await readFile(syllabusFile, 'utf8'));
  const pages = await driver.browser.context.newPage();
  await pages.goto(origin);
  console.log(`The learning pages are at ${origin}. Select a passage there and press Alt+K.`);
  console.log('Close the browser to end.');
  await new Promise((resolve) => driver.browser.context.once('close', resolve));
}

const headless = process.argv.includes('--headless') || !process.env.DISPLAY;
build();
const server = await startLearningPages();
const driver = await driveChromium({ headless, context: headless ? {} : { viewport: null } });
try {
  await (headless ? runHeadless : openForPerson)(driver, server.origin);
} catch (error) {
  console.error(`Failed: ${error instanceof Error ? error.message : String(error)}`);
  process.exitCode = 1;
} finally {
  await driver.close().catch(() => undefined);
  await server.close();
}
