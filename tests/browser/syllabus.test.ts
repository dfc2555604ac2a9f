import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import type { Clip } from '#lib/model/clip.ts';
import type { Topic } from '#lib/model/topic.ts';
import { scanned } from '#tests/tools/demo/pdfs/papers.ts';
import { type AnyDriver, BROWSERS, dropFile, filesOf, rowsOf } from '#tests/tools/demo/pdfs/reader.ts';
import { makeOutline, writeSpecification } from '#tests/tools/demo/pdfs/specification.ts';
import { click, fill, sees, textOf, until } from '#tests/tools/driver.ts';
import { putRows } from '#tests/tools/rows.ts';
import { aClip } from '#tests/unit/builders.ts';
import { bringInSyllabus } from '#tests/tools/main-job.ts';
import { OCEAN, aPackage } from '#tests/unit/syllabus/bring-in/a-package.ts';

const TABLE = [
  'Code,Topic,Learning outcome,Marks,Tier',
  '1.1.a,Deep water,"State, in words, the ""dispersion relation"".",40,',
  '1.1.b,Deep water,Derive the deep-water limit.,40,',
  '1.2.a,Shoaling,Explain why waves break.,20,Higher tier only',
].join('\r\n');

const outline = makeOutline(200);
let files: Awaited<ReturnType<typeof filesOf>>;
beforeAll(async () => {
  files = await filesOf({
    'table.csv': Buffer.from(TABLE),
    'framework.json': Buffer.from(JSON.stringify(aPackage(OCEAN))),
    'circle.json': Buffer.from(
      JSON.stringify(
        aPackage([
          { code: '1', text: 'Waves', parent: '2' },
          { code: '2', text: 'Swell', parent: '1' },
        ]),
      ),
    ),
    'specification.pdf': writeSpecification(outline),
    'scan.pdf': scanned(),
    'long.pdf': writeSpecification(makeOutline(6400)),
  });
});
afterAll(() => files?.remove());

describe.each(BROWSERS)('a syllabus comes in, in %s,', (_name, drive) => {
  let driver: AnyDriver;
  beforeAll(async () => {
    driver = await drive();
    await bringInSyllabus(driver, '1 Waves\n1.1 Swell\n2 Tides');
  });
  afterAll(async () => driver?.close());

  const start = async () => {
    await driver.tab.gotoDesk('#/syllabus');
    await sees(driver.tab, 'Bring in a newer version');
  };
  /** Picks a file in the dialog of the syllabus page. */
  const pick = async (name: string) => {
    await start();
    if ('firefox' in driver) await (await driver.firefox.find('#outline-file')).type(files.path(name));
    else await driver.page.setInputFiles('#outline-file', files.path(name));
  };
  const tree = () =>
    driver.tab.run(() =>
      [...document.querySelectorAll<HTMLElement>('.tree > li')].map(
        (item) =>
          '  '.repeat(Number(item.style.getPropertyValue('--depth'))) +
          item.textContent.replace(/\s+/g, ' ').trim(),
      ),
    );
  const kept = async () =>
    (await rowsOf<Topic>(driver.tab, 'topics'))
      .filter(({ dropped }) => !dropped)
      .sort((a, b) => a.order - b.order)
      .map(({ code, title }) => `${code} ${title}`.trim());

  test('from a CSV file that is picked: put right line by line, undone, and saved when the student says so', async () => {
    await pick('table.csv');
    await sees(driver.tab, '2 topics, 3 statements');
    expect(await tree()).toEqual([
      'Topic: Deep water 80 marks',
      '  Statement: 1.1.a State, in words, the "dispersion relation".',
      '  Statement: 1.1.b Derive the deep-water limit.',
      'Topic: Shoaling 20 marks',
      '  Statement: 1.2.a Explain why waves break. Higher tier',
    ]);
    expect(await kept()).toEqual(['1 Waves', '1.1 Swell', '2 Tides']);
    await click(driver.tab, 'Topic: Shoaling');
    await fill(driver.tab, 'Text', 'Shoaling and breaking');
    await driver.tab.press('Enter');
    await until(
      'the changed line',
      async () => (await tree())[3] === 'Topic: Shoaling and breaking 20 marks',
    );
    await click(driver.tab, 'Undo');
    await until('the line as it was', async () => (await tree())[3] === 'Topic: Shoaling 20 marks');
    await click(driver.tab, 'Save the syllabus');
    await sees(driver.tab, 'Saved: 2 topics.');
    expect(await kept()).toEqual(['Deep water', 'Shoaling']);
  });

  test('from a CASE package that is dropped on the page', async () => {
    await start();
    await dropFile(driver, files.path('framework.json'), 'framework.json');
    await sees(driver.tab, '4 topics, 2 statements');
    expect((await tree()).slice(0, 3)).toEqual([
      'Topic: 1 Surface waves',
      '  Topic: 1.1 The dispersion relation',
      '    Statement: 1.1.a State the dispersion relation.',
    ]);
    await click(driver.tab, 'Save the syllabus');
    await sees(driver.tab, 'Saved: 4 topics.');
  });

  test('from a CASE package with a circle: a message, and what can be had', async () => {
    await pick('circle.json');
    await sees(driver.tab, '2 topics, 0 statements');
    await click(driver.tab, '1 line was understood by a guess');
    await sees(driver.tab, 'Item 1: it was said to stand under itself, so it stands at the top.');
  });

  test('from the PDF of a specification: 98 % of its lines in their place, and other pages by choice', async () => {
    await pick('specification.pdf');
    await sees(driver.tab, 'nothing is saved yet');
    const found = new Set(await tree());
    const wanted = outline.map(({ depth, code, text }) => {
      const kind = depth === 2 ? 'Statement' : 'Topic';
      return `${'  '.repeat(depth)}${kind}: ${code} ${text}`;
    });
    expect(wanted.filter((line) => found.has(line)).length / wanted.length).toBeGreaterThanOrEqual(0.98);
    await click(driver.tab, await leftOutSummary());
    await sees(driver.tab, 'it belongs to the table of contents');
    await fill(driver.tab, 'From page', '3');
    await fill(driver.tab, 'to page', '3');
    await click(driver.tab, 'Read these pages');
    await until('fewer lines', async () => (await tree()).length < 60 && (await tree()).length > 5);
  });

  const leftOutSummary = () =>
    until('lines that were left out', () =>
      driver.tab.run(
        () =>
          [...document.querySelectorAll('summary')].find((one) => one.textContent.includes('left out'))
            ?.textContent,
      ),
    );

  test('from a scan: it says so, and offers to type or paste', async () => {
    await pick('scan.pdf');
    await sees(driver.tab, 'it is a scan, or pictures only');
    expect(await textOf(driver.tab)).toContain('type or paste the syllabus below');
    await fill(driver.tab, 'Syllabus', '1 Waves\n2 Tides');
    await click(driver.tab, 'Read it');
    await sees(driver.tab, '2 topics, 0 statements');
  });

  test('from more than 300 pages: progress is shown, and it can be stopped with what was read till then', async () => {
    await pick('long.pdf');
    await until('the progress to move', () =>
      driver.tab.run(() => Number(/Reading page (\d+) of 3\d\d/.exec(document.body.innerText)?.[1]) > 5),
    );
    await click(driver.tab, 'Stop');
    await sees(driver.tab, 'You stopped the reading: this is from the first');
    const [, read, of] = /first (\d+) of (\d+) pages/.exec(await textOf(driver.tab))!.map(Number);
    expect(of).toBeGreaterThanOrEqual(300);
    expect(read).toBeLessThan(of!);
    expect((await tree()).length).toBeGreaterThan(0);
    await click(driver.tab, 'Leave as it was');
    await sees(driver.tab, 'Bring in a newer version');
  });

  test('in a newer version: nothing is lost, and what is left is moved', async () => {
    await start();
    const topics = await rowsOf<Topic>(driver.tab, 'topics');
    const group = topics.find(({ title }) => title === 'Group velocity')!;
    await addClip(group);
    await start();
    await fill(
      driver.tab,
      'Syllabus',
      '1 Waves on the surface\n1.1 Dispersion relation\n(a) State the dispersion relation.\n3 Tides\n4 Sound in the sea',
    );
    await click(driver.tab, 'Read it');
    await sees(driver.tab, 'What this version changes');
    const told = await textOf(driver.tab);
    expect(told).toMatch(/Topics: 1 added, 1 dropped, 3 renamed, 0 moved/);
    await click(driver.tab, '1 topic dropped');
    await sees(driver.tab, '1.2 Group velocity 1 clip');
    await click(driver.tab, 'Save the syllabus');
    await sees(driver.tab, 'Left from topics that were dropped');
    expect((await rowsOf<Clip>(driver.tab, 'clips'))[0]!.topicIds).toEqual([group.id]);
    const after = await rowsOf<Topic>(driver.tab, 'topics');
    const waves = topics.find(({ title }) => title === 'Surface waves')!;
    expect(after.find(({ id }) => id === waves.id)!.title).toBe('Waves on the surface');
    const place = await driver.tab.run((id) => {
      const select = document.querySelector<HTMLSelectElement>(`#move-${id}`)!;
      select.focus();
      return [...select.options].findIndex((one) => one.text === '1.1 Dispersion relation');
    }, group.id);
    for (let i = 0; i < place; i++) await driver.tab.press('ArrowDown');
    await until('the topic to be chosen', () =>
      driver.tab.run((id) => {
        const select = document.querySelector<HTMLSelectElement>(`#move-${id}`)!;
        return select.selectedOptions[0]!.text === '1.1 Dispersion relation';
      }, group.id),
    );
    await driver.tab.press('Tab');
    await driver.tab.press('Enter');
    await until('nothing to be left', async () => !(await textOf(driver.tab)).includes('Left from topics'));
    const relation = after.find(({ title, dropped }) => title === 'Dispersion relation' && !dropped)!;
    expect((await rowsOf<Clip>(driver.tab, 'clips'))[0]!.topicIds).toEqual([relation.id]);
  });

  test('by keyboard alone: pasted, put right, a tier switched off, saved', async () => {
    await start();
    await until('the field', () =>
      driver.tab.run(() => {
        const field = document.querySelector<HTMLTextAreaElement>('#outline');
        field?.focus();
        return field !== null;
      }),
    );
    await driver.tab.run(() =>
      document.execCommand('insertText', false, '1 Waves (80 %)\n1.1 Swell (HL only)\n2 Tides (50 %)'),
    );
    await tabTo('Read it');
    await driver.tab.press('Enter');
    await sees(driver.tab, 'The shares of the top topics add up to 130 %');
    await tabTo('Scale them to 100 %');
    await driver.tab.press('Enter');
    await tabTo('HL 1 line');
    await driver.tab.press('Space');
    await tabTo('Topic: 2 Tides 38.5 %');
    await driver.tab.press('Enter');
    await until('the text field', () => driver.tab.run(() => document.activeElement?.localName === 'input'));
    await driver.tab.press('Escape');
    await tabTo('Save the syllabus', true);
    await driver.tab.press('Enter');
    await sees(driver.tab, 'Saved: 3 topics.');
    const topics = (await rowsOf<Topic>(driver.tab, 'topics')).filter(({ dropped }) => !dropped);
    expect(topics.find(({ group }) => group === 'HL')).toMatchObject({ title: 'Swell', off: true });
    expect(topics.find(({ title }) => title === 'Tides')!.share).toBe(38.5);
    await driver.tab.gotoDesk('#/coverage');
    await sees(driver.tab, '2 Tides');
    expect(await textOf(driver.tab)).not.toContain('1.1 Swell');
  });

  /** Presses Tab until what is in focus is called so. */
  const tabTo = async (name: string, backwards = false) => {
    for (let i = 0; i < 60; i++) {
      const here = await driver.tab.run(() => {
        const at = document.activeElement as HTMLElement;
        const label = (at as HTMLInputElement).labels?.[0]?.innerText;
        return (at.getAttribute('aria-label') ?? label ?? at.textContent).replace(/\s+/g, ' ').trim();
      });
      if (here === name) return;
      await driver.tab.press(backwards ? 'Shift+Tab' : 'Tab');
    }
    throw new Error(`Tab does not reach “${name}”`);
  };

  /** Puts a clip under a topic, as if it had been kept before. */
  const addClip = async ({ id, courseId }: Topic) => {
    const text = 'Energy travels with the group velocity.';
    await putRows(driver.tab, { clips: [aClip({ courseId, topicIds: [id], text })] });
  };
});
