import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { driveChromium } from '#tests/tools/chromium-driver.ts';
import { type BrowserDriver, click, fill, sees, textOf, until } from '#tests/tools/driver.ts';
import { driveFirefox } from '#tests/tools/firefox-driver.ts';
import { bringInSyllabus } from '#tests/tools/main-job.ts';
import { putRows, rowsIn } from '#tests/tools/rows.ts';
import { aClip } from '#tests/unit/builders.ts';
import { aSource } from '#tests/unit/ui/a-course.ts';

const PASSAGE =
  'Long waves travel faster than short ones, and so the swell of a storm arrives before its sea.';
const SECOND = 'In deep water the phase speed grows as the square root of the wavelength.';

/** The notes on disk as they read: moved in by dashes, | where the lead ends. */
const notesIn = async (driver: BrowserDriver): Promise<string[]> =>
  (await rowsIn(driver.tab, 'lines'))
    .sort((a, b) => a.order - b.order)
    .map(
      ({ depth, lead, rest, leftOut }) =>
        `${'-'.repeat(depth)}${lead}|${rest}${leftOut ? ` (${leftOut})` : ''}`,
    );

describe.each([
  ['Chromium', driveChromium],
  ['Firefox', driveFirefox],
] as const)('notes in %s', (_name, drive) => {
  let driver: BrowserDriver;
  let topicId: string;
  const tab = () => driver.tab;
  const saved = () =>
    until('the saved sign', () =>
      tab().run(() => document.querySelector('.saved-sign')?.textContent === 'Saved'),
    );
  /** The line in hand, as its field shows it. */
  const inHand = () => tab().run(() => (document.activeElement as HTMLTextAreaElement | null)?.value ?? null);

  beforeAll(async () => {
    driver = await drive();
    await bringInSyllabus(driver, '1 Waves\n1.a State what decides the speed of deep-water waves.\n2 Tides');
    const [waves] = (await rowsIn(tab(), 'topics')).filter(({ title }) => title === 'Waves');
    topicId = waves!.id;
    const [lagoonery, quillhaven] = [aSource(), aSource({ url: 'http://127.0.0.1/speed', title: 'Speed' })];
    const inTopic = { courseId: waves!.courseId, topicIds: [topicId] };
    await putRows(tab(), {
      sources: [lagoonery, quillhaven],
      clips: [
        aClip({ ...inTopic, sourceId: lagoonery.id, text: PASSAGE, html: `<p>${PASSAGE}</p>` }),
        aClip({ ...inTopic, sourceId: quillhaven.id, text: SECOND, html: `<p>${SECOND}</p>` }),
      ],
    });
  });
  afterAll(async () => driver?.close());

  test('reading asks for own words, points out a copy, and keeps what cleared an unclear mark', async () => {
    await tab().gotoDesk(`#/read/${topicId}`);
    await sees(tab(), '0 of 2 clips understood · 0 of 1 statements explained');
    await sees(tab(), 'Say it in your own words');
    await fill(tab(), 'In your own words', PASSAGE);
    await sees(tab(), 'These words stand in the passage as they are');
    expect(await textOf(tab())).toContain('0 of 2 clips understood');
    await fill(tab(), 'In your own words', 'Swell comes first: the longer the wave, the faster it is.');
    await sees(tab(), 'Understood');
    await sees(tab(), '1 of 2 clips understood');

    await tab().run(() =>
      [...document.querySelectorAll<HTMLLabelElement>('.read-card label')]
        .find((one) => one.textContent.startsWith('Unclear'))!
        .control!.focus(),
    );
    await tab().press('Space');
    await sees(tab(), 'What made it clear?');
    await sees(tab(), '0 of 2 clips understood');
    await fill(tab(), 'What made it clear?', 'I drew two waves and timed them.');
    await click(tab(), 'It is clear now');
    await sees(tab(), 'I drew two waves and timed them.');
    await sees(tab(), '1 of 2 clips understood');
    await click(tab(), 'Undo');
    await sees(tab(), 'Undone: an unclear mark was cleared');
    await sees(tab(), '0 of 2 clips understood');
    await click(tab(), 'Redo');
    await sees(tab(), '1 of 2 clips understood');
  });

  test('a topic is condensed by keyboard alone; every key is there after a reload', async () => {
    await tab().gotoDesk(`#/condense/${topicId}`);
    await sees(tab(), '0 of 8 sides');
    await click(tab(), 'Add a line');
    await tab().type('Deep water');
    await tab().press('Enter');
    await tab().press('Tab');
    await tab().type('Speed: grows with the wavelength');
    await tab().press('Enter');
    await tab().type(String.raw`Dispersion relation \(\omega^2 = gk\)`);
    // The lead ends before the formula.
    for (let i = 0; i < String.raw`\(\omega^2 = gk\)`.length; i++) await tab().press('ArrowLeft');
    await tab().press('Control+Enter');
    await tab().press('Alt+ArrowUp');
    await tab().press('ArrowDown');
    await tab().press('Shift+Tab');
    await saved();
    await sees(tab(), '1 of 8 sides');
    const expected = [
      'Deep water|',
      String.raw`-Dispersion relation|\(\omega^2 = gk\)`,
      'Speed:|grows with the wavelength',
    ];
    expect(await notesIn(driver)).toEqual(expected);
    await tab().gotoDesk(`#/condense/${topicId}`);
    await sees(tab(), 'grows with the wavelength');
    await until('the formula', () =>
      tab().run(() => document.querySelector('.note-lines math msup') !== null),
    );

    // Out of the field by keyboard: Escape, then Tab goes on as everywhere.
    await click(tab(), 'Speed:');
    expect(await inHand()).toBe('Speed: grows with the wavelength');
    await tab().press('Escape');
    expect(await tab().run(() => document.activeElement!.textContent)).toBe('The lead ends at the cursor');
    await tab().press('Tab');
    expect(await tab().run(() => document.activeElement!.getAttribute('aria-label'))).toBe('Move out');
  });

  test('undo takes back step by step, by key in the line as well, and redo brings it again', async () => {
    await tab().gotoDesk(`#/condense/${topicId}`);
    await sees(tab(), 'grows with the wavelength');
    const before = await notesIn(driver);
    await click(tab(), 'Speed:');
    await tab().press('End');
    await tab().type(' and nothing else');
    await saved();
    await tab().press('Control+z');
    await sees(tab(), 'Undone: a line was changed');
    await until('the words gone', async () => (await inHand()) === 'Speed: grows with the wavelength');
    expect(await notesIn(driver)).toEqual(before);
    await tab().press('Control+Shift+z');
    await until('the words again', async () => (await inHand())?.endsWith('nothing else'));
    await tab().press('Control+z');
    await until('the words gone', async () => !(await inHand())?.endsWith('nothing else'));
    expect(await notesIn(driver)).toEqual(before);
  });

  test('lines are made of own words; what is known well is left out and taken back in', async () => {
    await tab().gotoDesk(`#/condense/${topicId}`);
    await sees(tab(), 'grows with the wavelength');
    await click(tab(), 'Make lines of it');
    await sees(tab(), '1 line from it');
    await saved();
    expect((await notesIn(driver)).at(-1)).toBe('Swell comes first:|the longer the wave, the faster it is.');
    await click(tab(), 'Known well', '.in-hand');
    await saved();
    expect((await notesIn(driver)).at(-1)).toMatch(/ \(known\)$/);
    await click(tab(), 'Take back in', '.in-hand');
    await saved();
    expect((await notesIn(driver)).at(-1)).not.toContain('(known)');
    await click(tab(), 'Not on the syllabus', '.clip-card');
    await sees(tab(), '1 clip left out');
  });

  test('the question that a line suggests is written beside it', async () => {
    await tab().gotoDesk(`#/condense/${topicId}`);
    await sees(tab(), 'grows with the wavelength');
    await click(tab(), 'Speed:');
    await sees(tab(), 'It suggests the question: Speed?');
    await click(tab(), 'Write the question');
    await fill(tab(), 'Question', 'What does the speed of deep-water waves grow with?');
    await click(tab(), 'Add the question');
    await sees(tab(), 'Question beside it: What does the speed of deep-water waves grow with?');
    const [question] = await rowsIn(tab(), 'questions');
    const lines = await rowsIn(tab(), 'lines');
    expect(question!.lineId).toBe(lines.find(({ lead }) => lead === 'Speed:')!.id);
  });

  test('broken TeX, emoji, right-to-left words and a very long line do no harm', async () => {
    await tab().gotoDesk(`#/condense/${topicId}`);
    await sees(tab(), 'grows with the wavelength');
    const before = await notesIn(driver);
    await click(tab(), 'Add a line');
    const odd = String.raw`Odd: \(\frac{a\) 👩‍🚀 שלום`;
    /** Copies a text out of a field of its own and pastes it where the caret is, by the keys that students use. */
    const paste = async (text: string) => {
      await tab().run((value) => {
        const field = Object.assign(document.createElement('textarea'), { id: 'copied-from', value });
        document.activeElement!.setAttribute('data-paste-here', '');
        document.body.append(field);
        field.focus();
        field.select();
      }, text);
      await tab().press('Control+c');
      await tab().run(() => {
        document.getElementById('copied-from')!.remove();
        const field = document.querySelector<HTMLTextAreaElement>('[data-paste-here]')!;
        field.removeAttribute('data-paste-here');
        field.focus();
      });
      await tab().press('Control+v');
    };
    await paste(odd);
    await sees(tab(), 'The formula');
    await saved();
    await tab().press('Enter');
    const long = 'salt '.repeat(9000).trim();
    await paste(`first\n${long}`);
    await saved();
    const after = await notesIn(driver);
    expect(after.slice(0, before.length + 1)).toEqual([...before, String.raw`Odd:|\(\frac{a\) 👩‍🚀 שלום`]);
    // No word of it is lost: what is too long for a line goes on in the next.
    const rest = after.slice(before.length + 1).map((line) => line.replace(/\|$/, ''));
    expect(rest[0]).toBe('first');
    expect(rest.slice(1).join(' ')).toBe(long);
    const counted = await until('more sides', async () =>
      /\b([2-9]|\d\d) of 8 sides/.exec(await textOf(tab())),
    );
    // The same number where it is printed.
    await tab().gotoDesk('#/print');
    const printed = await until('the sides to print', async () =>
      /(\d+) sides of A4/.exec(await textOf(tab())),
    );
    expect(printed[1]).toBe(counted[1]);
    expect(await tab().run(() => document.querySelectorAll('.print-page').length)).toBe(Number(counted[1]));
  });

  test('the overview says what stands out, topic by topic', async () => {
    await tab().gotoDesk('#/notes');
    await sees(tab(), 'Little for its share');
    await click(tab(), 'Read: 2 Tides');
    await sees(tab(), 'Nothing is kept for this topic yet.');
  });
});
