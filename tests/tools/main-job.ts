import { readFile } from 'node:fs/promises';
import { demoPages, syllabusFile } from './demo/pages.ts';
import { type BrowserDriver, type PageDriver, click, fill, sees, select, textOf, until } from './driver.ts';
import { type SlipLook, lookAtSlip } from './slip-look.ts';

export interface JobReport {
  clips: { path: string; markup: string; suggested: string[]; kept: string; formulas: number }[];
  topics: number;
  /** Topics with nothing: before the first clip, after the last, and after the restart. */
  gaps: { before: number; after: number; restarted: number };
  questions: number;
  round: { marks: string; topics: string[] };
}

export interface JobOptions {
  origin: string;
  /** How many demo pages to clip from. */
  pages: number;
  say?: (line: string) => void;
  /** Called with a picture of each screen. */
  picture?: (name: string, png: Buffer) => Promise<void>;
}

const EXAM_IN_DAYS = 40;

/**
 * Carries out the main job as a student would: a course with its syllabus, clips from learning pages, questions from
 * the clips, a round from the toolbar, and all of it read back after the browser was closed and opened again.
 * Fails with an Error that names the step that did not come out right.
 */
export async function doMainJob(driver: BrowserDriver, options: JobOptions): Promise<JobReport> {
  const say = options.say ?? (() => {});
  const shoot = async (name: string, page: PageDriver = driver.tab) =>
    options.picture?.(name, await page.screenshot());
  const topics = await bringInSyllabus(driver, await readFile(syllabusFile, 'utf8'), shoot);
  const before = await gapsOf(driver);
  await shoot('coverage-before');
  say(`Syllabus saved: ${topics} topics; ${before} have nothing yet`);

  const clips: JobReport['clips'] = [];
  let questions = 0;
  for (const page of demoPages.slice(0, options.pages)) {
    const slip = await clipFrom(driver, `${options.origin}${page.path}`, page, shoot);
    const kept = slip.topics.filter(({ checked }) => checked).map(({ name }) => name);
    clips.push({
      path: page.path,
      markup: page.markup,
      suggested: slip.topics.map(({ name }) => name),
      kept: kept.join(', '),
      formulas: slip.formulas,
    });
    say(`Kept from ${page.path} (${page.markup}, ${slip.formulas} formulas) under: ${kept.join(', ')}`);
    for (const topic of slip.topics) say(`    suggested ${topic.name}`);
    questions += await writeFrom(driver, page);
    await shoot(`clip-${clips.length}`);
  }
  const after = await gapsOf(driver);
  await shoot('coverage-after');
  say(`Topics with nothing: ${before} before, ${after} now`);
  if (after >= before) throw new Error(`The gaps did not shrink: ${before} before, ${after} after`);

  const round = await runRound(driver, options.origin, shoot);
  say(`Round: ${round.marks} (${round.topics.join('; ')})`);

  const told = await standingOf(driver);
  await driver.restart();
  const restarted = await gapsOf(driver);
  const retold = await standingOf(driver);
  if (retold !== told)
    throw new Error(`After the restart the deck reads differently:\n${told}\n---\n${retold}`);
  await shoot('coverage-restarted');
  say(`After a restart of the browser everything reads back: ${restarted} topics with nothing`);
  return { clips, topics, gaps: { before, after, restarted }, questions, round };
}

type Shoot = (name: string, page?: PageDriver) => Promise<void>;

/** Starts the demo course and saves its syllabus; gives how many topics were saved. */
export async function bringInSyllabus(
  { tab }: BrowserDriver,
  syllabus: string,
  shoot: Shoot = async () => {},
): Promise<number> {
  await tab.gotoDesk();
  await sees(tab, 'Start a course');
  await shoot('start');
  await fill(tab, 'Name of the course', 'Foundation Oceanography');
  const exam = new Date(Date.now() + EXAM_IN_DAYS * 86_400_000).toISOString().slice(0, 10);
  await fill(tab, 'Exam day', exam);
  await click(tab, 'Start');
  await sees(tab, 'Bring in the syllabus');
  await fill(tab, 'Syllabus', syllabus);
  await click(tab, 'Read it');
  await sees(tab, 'nothing is saved yet');
  await shoot('syllabus');
  await click(tab, 'Save the syllabus');
  const saved = await until('the syllabus saved', async () => /Saved: (\d+) topic/.exec(await textOf(tab)));
  return Number(saved[1]);
}

async function gapsOf({ tab }: BrowserDriver): Promise<number> {
  await tab.gotoDesk('#/coverage');
  const line = await until('the coverage', async () =>
    /(\d+) of \d+ topics? ha(?:s|ve) nothing yet|Every topic has something/.exec(await textOf(tab)),
  );
  return Number(line[1] ?? 0);
}

/** The coverage and the clips as text, to compare before and after. */
async function standingOf(driver: BrowserDriver): Promise<string> {
  const { tab } = driver;
  await gapsOf(driver);
  const coverage = await textOf(tab);
  await tab.gotoDesk('#/clips');
  await sees(tab, 'All (');
  return `${coverage}\n${await textOf(tab)}`;
}

type DemoPage = (typeof demoPages)[number];

async function clipFrom(
  { tab }: BrowserDriver,
  url: string,
  page: DemoPage,
  shoot: Shoot,
): Promise<SlipLook> {
  await tab.goto(url);
  await select(tab, page.passageSelector);
  await tab.openSlip();
  let slip = await until('the slip', async () => {
    const look = await lookAtSlip(tab);
    return look?.focus === 'own-words' && look;
  });
  if (slip.formulas === 0) throw new Error(`No formula in the slip for ${page.path}`);
  if (!slip.topics.some(({ name, checked }) => checked && name.startsWith(`${page.topicCode} `)))
    slip = await correctTopic(tab, page.topicCode);
  await tab.type(page.ownWords);
  await shoot(`slip${page.path.replaceAll('/', '-')}`);
  await tab.press('Enter');
  await until('the slip to say that it is kept', async () =>
    (await lookAtSlip(tab))?.text.startsWith('Kept'),
  );
  await tab.press('Escape');
  await until('the slip to go', async () => (await lookAtSlip(tab)) === null);
  return slip;
}

/** By keyboard: unticks what is ticked and ticks the topic with this code, looked up where it is not suggested. */
async function correctTopic(tab: BrowserDriver['tab'], code: string): Promise<SlipLook> {
  const focusTopic = (wanted: string | null) =>
    tab.inSlip((root, prefix) => {
      const boxes = [...root!.querySelectorAll<HTMLInputElement>('.topics input[type=checkbox]')];
      const box = boxes.find((one) =>
        prefix === null ? one.checked : one.closest('label')!.textContent.trim().startsWith(prefix),
      );
      box?.focus();
      return box !== undefined;
    }, wanted);
  while (await focusTopic(null)) {
    await tab.press('Space');
    await new Promise((resolve) => setTimeout(resolve, 50));
  }
  if (await focusTopic(`${code} `)) await tab.press('Space');
  else {
    await tab.inSlip((root) => root!.querySelector<HTMLInputElement>('#other-topic')!.focus());
    await tab.type(code);
    await until('the topic to be found', () =>
      tab.inSlip((root) => root!.querySelector('.found button') !== null),
    );
    await tab.press('Tab');
    await tab.press('Enter');
  }
  const slip = await until(`topic ${code} to be ticked`, async () => {
    const look = await lookAtSlip(tab);
    return look?.topics.some(({ name, checked }) => checked && name.startsWith(`${code} `)) && look;
  });
  await tab.inSlip((root) => root!.querySelector<HTMLTextAreaElement>('#own-words')!.focus());
  return slip;
}

/** Writes the page's questions and lines from the clip that was kept last. */
async function writeFrom({ tab }: BrowserDriver, page: DemoPage): Promise<number> {
  await tab.gotoDesk('#/clips');
  await until('the clip in the list', () =>
    tab.run(() => {
      const first = document.querySelector<HTMLAnchorElement>('.excerpt');
      first?.click();
      return first !== null;
    }),
  );
  await sees(tab, 'Questions from this clip');
  for (const question of page.questions) {
    await fill(tab, 'Question', question.prompt, '.write-question');
    await fill(tab, 'Answer', question.answer, '.write-question');
    await fill(tab, 'Marks', String(question.marks), '.write-question');
    await click(tab, 'Add the question');
    await until('the question in the list', () => holds(tab, question.prompt));
  }
  for (const line of page.lines) {
    await fill(tab, 'Lead', line.lead, '.write-line');
    await fill(tab, 'Rest', line.rest, '.write-line');
    await click(tab, 'Add the line');
    await until('the line in the list', () => holds(tab, line.lead));
  }
  return page.questions.length;
}

const holds = (tab: PageDriver, text: string): Promise<boolean> =>
  tab.run(
    (wanted) => [...document.querySelectorAll('.items li')].some((one) => one.textContent.includes(wanted)),
    text,
  );

async function runRound(driver: BrowserDriver, origin: string, shoot: Shoot): Promise<JobReport['round']> {
  await driver.tab.goto(`${origin}${demoPages[0]!.path}`);
  const popup = await driver.tab.openPopup();
  await sees(popup, 'Gains most now');
  await until('the round to be ready', async () => (await textOf(popup)).includes('topics ha'));
  await shoot('popup', popup);
  const isAsked = async () => (await textOf(popup)).includes('Uncover');
  await until('the round to begin', async () => {
    // A key that comes before the popup's window has the keyboard is lost: a person presses it again.
    await popup.press('Enter');
    return until('the first question', isAsked, 4_000).catch(() => null);
  });
  // Full, part, none, full, ... as it may go.
  for (let asked = 0; asked < 5; asked++) {
    await sees(popup, 'Uncover');
    if (asked === 0) await shoot('round-asked', popup);
    await popup.press('Enter');
    await sees(popup, 'How many marks?');
    if (asked === 0) await shoot('round-uncovered', popup);
    const keys = await popup.run(() =>
      [...document.querySelectorAll('.marks button')].map(
        (one) => one.querySelector('kbd')?.textContent ?? null,
      ),
    );
    // One mark goes by letters; several by their number, the fullest first.
    const key = keys[asked % keys.length] ?? String(keys.length - 1 - (asked % keys.length));
    await popup.press(key);
  }
  await click(popup, 'Stop here');
  await sees(popup, ' marks');
  await until('the end of the round', () => popup.run(() => document.querySelector('.marks-table') !== null));
  await shoot('round-end', popup);
  const told = await popup.run(() => ({
    marks: document.querySelector('h2')!.textContent,
    topics: [...document.querySelectorAll('.marks-table tr')].map((row) =>
      (row as HTMLElement).innerText.replace(/\s+/g, ' ').trim(),
    ),
  }));
  await popup.close();
  return told;
}
