import type { CDPSession, Page } from 'playwright-core';
import { type DeckBrowser, withDeckBrowser } from './deck-browser.ts';
import { type Figure, figure } from './figure.ts';
import { median } from './timing.ts';

/** One topic, so that all lines stand on one page. */
const DECK = { topics: 1, questions: 100, attempts: 0 };
const NOTES = { clips: 60, lines: 400 };
const TYPED = String.raw`The speed of long waves: \(c = \sqrt{g h}\) grows with the depth alone, whatever the period is. `;
const REPEATS = 3;
/** A fast typist's pause between two keys. */
const BETWEEN_MS = 90;

/**
 * What a key costs in script while a line is typed in a course of 400 lines: all that the page runs from this key to the
 * next, saving and counting the sides included, against the same keys in a bare field.
 */
export async function figures(): Promise<Figure[]> {
  const { ours, bare } = await withDeckBrowser(DECK, async (deck) => {
    await deck.run('fillNotes', NOTES);
    return { ours: await typed(await outline(deck)), bare: await typed(await bareField(deck)) };
  });
  console.log(
    `  worst key: ${Math.max(...ours).toFixed(1)} ms, in a bare field ${Math.max(...bare).toFixed(1)} ms`,
  );
  const late = (values: number[]) => values.toSorted((a, b) => a - b)[Math.ceil(0.99 * values.length) - 1]!;
  const perKey = (name: string, of: (values: number[]) => number, atMost: number) =>
    figure({
      name: `notes/${name}`,
      value: of(ours),
      unit: 'ms',
      against: { what: 'a bare field', value: of(bare) },
      goal: { atMost },
    });
  return [perKey('typing-key-ms', median, 16), perKey('typing-key-99th-ms', late, 50)];
}

/** The outline with a new line in hand, in the middle of the others. */
async function outline(deck: DeckBrowser): Promise<Page> {
  const topicId = await deck.run('firstTopic');
  const page = await deck.browser.openExtensionPage(`desk.html#/condense/${topicId}`);
  await page.locator('.line-text').nth(200).click();
  await page.keyboard.press('End');
  await page.keyboard.press('Enter');
  await page.getByText(/^\d+ of \d+ sides$/).waitFor();
  // The reader of TeX is loaded with the first formula of the course; it is not the key's doing.
  await page.waitForTimeout(1500);
  return page;
}

async function bareField(deck: DeckBrowser): Promise<Page> {
  const page = await deck.browser.openExtensionPage('bench.html');
  await page.evaluate(() => {
    document.body.innerHTML = '<textarea></textarea>';
    document.querySelector('textarea')!.focus();
  });
  return page;
}

/** Script time in ms that each key takes. */
async function typed(page: Page): Promise<number[]> {
  const session = await page.context().newCDPSession(page);
  await session.send('Performance.enable');
  const costs: number[] = [];
  for (const key of TYPED.repeat(REPEATS)) {
    const before = await scriptTime(session);
    await page.keyboard.type(key);
    await page.waitForTimeout(BETWEEN_MS);
    costs.push((await scriptTime(session)) - before);
  }
  await page.close();
  return costs;
}

/** All script of a page so far, with the layout that it asked for, in ms. */
async function scriptTime(session: CDPSession): Promise<number> {
  const { metrics } = await session.send('Performance.getMetrics');
  const of = (name: string) => metrics.find((one) => one.name === name)!.value;
  return 1000 * (of('ScriptDuration') + of('LayoutDuration') + of('RecalcStyleDuration'));
}
