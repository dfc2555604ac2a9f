import { setTimeout } from 'node:timers/promises';
import { type DeckBrowser, withDeckBrowser } from './deck-browser.ts';
import { type Figure, type Goal, figure } from './figure.ts';
import type { DeckSize } from './make-deck.ts';
import { inTurns, median } from './timing.ts';

/** Chromium keeps a database open for two seconds after its last page; a student's popup finds it closed. */
const UNTIL_CLOSED_MS = 2200;
const WARM_UP = 1;

interface Case {
  name: string;
  size: DeckSize;
  repeats: number;
  goal?: Goal;
  /** How long the page may be deaf at a time, after its first paint; measured where it is given. */
  blockedGoal?: Goal;
}

const CASES: Case[] = [
  {
    name: 'ui/popup-first-question',
    size: { topics: 20, questions: 5000, attempts: 0 },
    repeats: 15,
    goal: { atMost: 150, more: true },
  },
  {
    name: 'ui/popup-first-question-with-attempts',
    size: { topics: 20, questions: 5000, attempts: 50_000 },
    repeats: 15,
  },
  {
    name: 'ui/popup-first-question-20000',
    size: { topics: 20, questions: 20_000, attempts: 200_000 },
    repeats: 7,
    goal: { atMost: 100, more: true },
    blockedGoal: { atMost: 50, more: true },
  },
];

/**
 * From the start of navigation until the popup has painted the first question, against an empty page; and until a round
 * can start. Then the longest that its main thread is blocked at a time, from its first paint until all is worked out.
 */
export async function figures(): Promise<Figure[]> {
  const all: Figure[] = [];
  for (const one of CASES) all.push(...(await withDeckBrowser(one.size, (deck) => measure(deck, one))));
  return all;
}

async function measure(deck: DeckBrowser, { name, repeats, goal, blockedGoal }: Case): Promise<Figure[]> {
  await deck.openDeskOnce();
  const opened: Opened[] = [];
  const emptyOnes: Opened[] = [];
  const popup = async () => {
    await setTimeout(UNTIL_CLOSED_MS);
    // It stays open until all is read: a read left in the middle would hold up the next opening.
    opened.push(await openAndWatch(deck, 'popup.html', ['.asks', 'button.main:enabled'], '.gaps'));
    return opened.at(-1)!.painted[0]!;
  };
  const empty = async () => {
    emptyOnes.push(await openAndWatch(deck, 'empty.html', ['p'], 'p'));
    return emptyOnes.at(-1)!.painted[0]!;
  };
  const { ours, other } = await inTurns({ repeats, warmUp: WARM_UP }, popup, empty);
  const [counted, beside] = [opened.slice(WARM_UP), emptyOnes.slice(WARM_UP)];
  const what = 'empty extension page';
  const against = { what, value: other };
  const middle = (all: Opened[], value: (one: Opened) => number) => median(all.map(value));
  const round = name.replace('first-question', 'round-ready');
  const all = [
    figure({ name: `${name}-ms`, value: ours, unit: 'ms', against, ...(goal && { goal }) }),
    figure({
      name: `${round}-ms`,
      value: middle(counted, ({ painted }) => painted[1]!),
      unit: 'ms',
      against,
    }),
  ];
  if (!blockedGoal) return all;
  const blocked = figure({
    name: `${name.replace('first-question', 'blocked')}-ms`,
    value: middle(counted, (one) => one.blocked),
    unit: 'ms',
    against: { what, value: middle(beside, (one) => one.blocked) },
    goal: blockedGoal,
  });
  const known = figure({
    name: `${name.replace('first-question', 'gaps')}-ms`,
    value: middle(counted, (one) => one.done),
    unit: 'ms',
    against,
  });
  return [...all, blocked, known];
}

interface Opened {
  /** When each element was painted, in ms from the start of navigation. */
  painted: number[];
  /** The longest that the main thread was blocked at a time after the first paint, in ms. */
  blocked: number;
  /** When the last element was there, in ms from the start of navigation. */
  done: number;
}

/** What is written behind an opening's back takes no longer than this, in ms. */
const AFTERWARDS_MS = 500;

/** Opens a page in a fresh tab until it holds an element, and a little longer. */
async function openAndWatch(
  deck: DeckBrowser,
  path: string,
  selectors: string[],
  last: string,
): Promise<Opened> {
  const page = await deck.browser.context.newPage();
  await page.addInitScript(watch, { selectors, last });
  await page.goto(deck.browser.url(path));
  await page.waitForFunction(() => (globalThis as { opened?: Opened }).opened);
  await setTimeout(AFTERWARDS_MS);
  const opened = await page.evaluate(() => (globalThis as unknown as { opened: Opened }).opened);
  await page.close();
  return opened;
}

/** Runs in the page, before anything of its own. */
function watch({ selectors, last }: { selectors: string[]; last: string }): void {
  const afterFrame = (selector: string) =>
    new Promise<number>((resolve) => {
      const observer = new MutationObserver(() => {
        if (!document.querySelector(selector)) return;
        observer.disconnect();
        // A frame's callbacks run before it is painted; a message sent from them is taken up after.
        const { port1, port2 } = new MessageChannel();
        port1.onmessage = () => resolve(performance.now());
        requestAnimationFrame(() => port2.postMessage(null));
      });
      observer.observe(document, { childList: true, subtree: true, attributes: true });
    });
  // The browser's own word on its first paint comes later than any script can see; it holds for an element that was
  // part of that paint.
  const firstPaint = new Promise<number>((resolve) => {
    new PerformanceObserver((list) => {
      for (const { name, startTime } of list.getEntries()) {
        if (name === 'first-contentful-paint') resolve(startTime);
      }
    }).observe({ type: 'paint', buffered: true });
  });
  const opened = { painted: [] as number[], blocked: 0, done: 0 };
  void firstPaint.then(() => {
    // A timer that comes late was held up by that much.
    let before = performance.now();
    const beat = () => {
      const now = performance.now();
      opened.blocked = Math.max(opened.blocked, now - before);
      before = now;
      globalThis.setTimeout(beat, 0);
    };
    beat();
  });
  const lastFrame = afterFrame(last);
  void Promise.all([firstPaint, ...selectors.map(afterFrame)]).then(async ([first, ...frames]) => {
    opened.painted = frames.map((frame) => Math.max(first!, frame));
    opened.done = await lastFrame;
    Object.assign(globalThis, { opened });
  });
}
