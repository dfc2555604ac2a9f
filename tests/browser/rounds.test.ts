import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { driveChromium } from '#tests/tools/chromium-driver.ts';
import {
  type BrowserDriver,
  type PageDriver,
  click,
  fill,
  sees,
  textOf,
  until,
} from '#tests/tools/driver.ts';
import { driveFirefox } from '#tests/tools/firefox-driver.ts';
import { bringInSyllabus } from '#tests/tools/main-job.ts';

const LINE = { lead: 'Spring tides', rest: 'come at new moon, and at full moon' };
const FORMULA = { lead: 'Long waves', rest: String.raw`travel at \(c = \sqrt{g h}\)` };
const QUESTION = { prompt: 'How long is a lunar day?', answer: '24.84 h' };

interface Kept {
  itemId: string;
  roundId: string;
  marks: number;
  typed: string;
}

/** The attempts on disk, oldest first. */
const attemptsIn = (page: PageDriver): Promise<Kept[]> =>
  page.run(
    () =>
      new Promise<Kept[]>((resolve, reject) => {
        const opening = indexedDB.open('plumbline');
        opening.onerror = () => reject(opening.error!);
        opening.onsuccess = () => {
          const all = opening.result.transaction('attempts').objectStore('attempts').getAll();
          all.onsuccess = () => {
            opening.result.close();
            resolve(all.result.sort((a: { at: number }, b: { at: number }) => a.at - b.at));
          };
        };
      }),
  );

describe.each([
  ['Chromium', driveChromium],
  ['Firefox', driveFirefox],
] as const)('rounds in %s', (_name, drive) => {
  let driver: BrowserDriver;
  const tab = () => driver.tab;

  beforeAll(async () => {
    driver = await drive();
    await bringInSyllabus(driver, '1 Waves\n2 Tides');
    await click(tab(), 'Coverage');
    await click(tab(), '2 Tides', '.coverage');
    await sees(tab(), 'What the syllabus asks');
    for (const { lead, rest } of [LINE, FORMULA]) {
      await fill(tab(), 'Lead', lead, '.write-line');
      await fill(tab(), 'Rest', rest, '.write-line');
      await click(tab(), 'Add the line');
      await until('the line in the list', async () =>
        (
          await tab().run(
            () => document.querySelector('.items')?.parentElement?.parentElement?.innerText ?? '',
          )
        ).includes(lead),
      );
    }
    await fill(tab(), 'Question', QUESTION.prompt, '.write-question');
    await fill(tab(), 'Answer', QUESTION.answer, '.write-question');
    await click(tab(), 'Add the question');
    await sees(tab(), QUESTION.prompt);
  });
  afterAll(async () => driver?.close());

  /** Chooses an option of the field with this label by keyboard alone: the words begin with what is typed. */
  const chooseByKey = async (label: string, words: string) => {
    await tab().run((wanted) => {
      const labels = [...document.querySelectorAll<HTMLLabelElement>('label')];
      (labels.find((one) => one.textContent.trim() === wanted)!.control as HTMLElement).focus();
    }, label);
    await tab().type(words);
  };

  test('as the notes stand: lines uncovered by key, a typed answer, all by keyboard; nothing is lost on the way', async () => {
    await tab().gotoDesk('#/round');
    await sees(tab(), 'What to recall');
    await chooseByKey('Order', 'As the');
    await tab().press('Enter');
    await click(tab(), 'Start a');
    await sees(tab(), LINE.lead);
    await tab().press('Space');
    await sees(tab(), 'come');
    expect(await textOf(tab())).not.toContain('full moon');
    await tab().press('Space');
    await sees(tab(), '6 steps covered');
    await tab().press('Enter');
    await sees(tab(), '2 of 8 steps were uncovered as a help. Suggested: Part. You decide.');
    await tab().press('Enter');

    await sees(tab(), FORMULA.lead);
    await sees(tab(), '3 steps covered');
    for (let i = 0; i < 3; i++) await tab().press('Space');
    await until('the formula', () => tab().run(() => document.querySelector('.answer math msqrt') !== null));
    await sees(tab(), 'Suggested: None');
    await tab().press('p');

    await sees(tab(), QUESTION.prompt);
    // Left in the middle: what was marked is there.
    await tab().gotoDesk('#/round');
    await sees(tab(), 'What to recall');
    expect((await attemptsIn(tab())).map(({ marks }) => marks)).toEqual([0.5, 0.5]);
  });

  test('a typed answer in another unit suggests full marks; the student decides', async () => {
    await tab().gotoDesk('#/round');
    await sees(tab(), 'What to recall');
    await chooseByKey('Order', 'Back');
    await click(tab(), 'Start a');
    await sees(tab(), QUESTION.prompt);
    await click(tab(), 'Why this one?');
    await sees(tab(), 'of 100 exam marks');
    await tab().run(() => document.querySelector<HTMLElement>('#typed')!.focus());
    await tab().type('89424 s');
    await tab().press('Enter');
    await sees(tab(), 'The same quantity in another unit. Suggested: Full. You decide.');
    await tab().press('Enter');
    await sees(tab(), FORMULA.lead);
    expect((await attemptsIn(tab())).at(-1)).toMatchObject({ marks: 1, typed: '89424 s' });
  });

  test('a round in the popup beside one in the desk: each attempt is kept once', async () => {
    const before = (await attemptsIn(tab())).length;
    const popup = await tab().openPopup();
    await until('the round to be ready', () =>
      popup.run(() => document.querySelector('button.main:enabled') !== null),
    );
    await popup.press('Enter');
    await sees(popup, 'Uncover');
    await popup.press('Enter');
    await sees(popup, 'How many marks?');
    await popup.press('f');
    await until('the attempt', async () => (await attemptsIn(popup)).length === before + 1);
    await popup.close();
    // The desk's own round goes on where it was.
    await sees(tab(), FORMULA.lead);
    await tab().run(() => document.querySelector<HTMLElement>('.steps')!.focus());
    await tab().press('Enter');
    await sees(tab(), 'Nothing was uncovered as a help');
    await tab().press('f');
    const attempts = await until('both attempts', async () => {
      const all = await attemptsIn(tab());
      return all.length === before + 2 && all;
    });
    expect(new Set(attempts.slice(-2).map(({ roundId }) => roundId)).size).toBe(2);
  });

  test('pictures: the curve of the topic up to the exam, attempts per day, what ten minutes would gain', async () => {
    await tab().gotoDesk('#/round');
    await sees(tab(), '10 minutes now');
    await sees(tab(), '5 attempts in the last four weeks; days with some: 1; today: 5.');
    await click(tab(), 'Coverage');
    await click(tab(), '2 Tides', '.coverage');
    await sees(tab(), 'How it is being forgotten');
    await until('the curve', () =>
      tab().run(() => document.querySelectorAll('.chart path.mark').length === 5),
    );
    expect(
      await tab().run(() => document.querySelector('.chart .curve')!.getAttribute('d')!.length),
    ).toBeGreaterThan(200);
  });
});
