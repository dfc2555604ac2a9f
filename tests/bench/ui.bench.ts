import { setTimeout } from 'node:timers/promises';
import { type DeckBrowser, withDeckBrowser } from './deck-browser.ts';
import { type Figure, type Goal, figure } from './figure.ts';
import { longestTask } from './longest-task.ts';
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
  /** How long its main thread may be blocked at a time, after its first paint; measured where it is given. */
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
 * can start, and until all is worked out; then how long its main thread is blocked at a time after its first paint.
 */
export async function figures(): Promise<Figure[]> {
  const all: Figure[] = [];
  for (const one of CASES) all.push(...(await withDeckBrowser(one.size, (deck) => measure(deck, one))));
  return all;
}

async function measure(deck: DeckBrowser, { name, repeats, goal, blockedGoal }: Case): Promise<Figure[]> {
  await deck.openDeskOnce();
  const opened: number[][] = [];
  const popup = async () => {
    await setTimeout(UNTIL_CLOSED_MS);
    // It stays open until all is read: a read left in the middle would hold up the next opening.
    opened.push(await openAndWatch(deck, 'popup.html', ['.asks', 'button.main:enabled', KNOWN]));
    return opened.at(-1)![0]!;
  };
  const empty = async () => (await openAndWatch(deck, 'empty.html', ['p']))[0]!;
  const { ours, other } = await inTurns({ repeats, warmUp: WARM_UP }, popup, empty);
  const against = { what: EMPTY, value: other };
  const until = (what: string, element: number) =>
    figure({
      name: `${name.replace('first-question', what)}-ms`,
      value: median(opened.slice(WARM_UP).map((times) => times[element]!)),
      unit: 'ms',
      against,
    });
  return [
    figure({ name: `${name}-ms`, value: ours, unit: 'ms', against, ...(goal && { goal }) }),
    until('round-ready', 1),
    until('gaps', 2),
    ...(blockedGoal
      ? [await measureBlocked(deck, name.replace('first-question', 'blocked'), blockedGoal)]
      : []),
  ];
}

/** With the gaps all is known that the popup shows. */
const KNOWN = '.gaps';
const EMPTY = 'empty extension page';
const BLOCKED_REPEATS = 5;
/** What is kept behind the page's back is written within this, in ms. */
const AFTERWARDS_MS = 500;

async function measureBlocked(deck: DeckBrowser, name: string, goal: Goal): Promise<Figure> {
  const longest = async (path: string, last: string) => {
    await setTimeout(UNTIL_CLOSED_MS);
    const page = await deck.browser.context.newPage();
    const blocked = await longestTask(page, async () => {
      await page.goto(deck.browser.url(path));
      await page.waitForSelector(last);
      await setTimeout(AFTERWARDS_MS);
    });
    await page.close();
    return blocked;
  };
  const { ours, other } = await inTurns(
    { repeats: BLOCKED_REPEATS },
    () => longest('popup.html', KNOWN),
    () => longest('empty.html', 'p'),
  );
  return figure({
    name: `${name}-ms`,
    value: ours,
    unit: 'ms',
    against: { what: EMPTY, value: other },
    goal,
  });
}

/** Opens a page in a fresh tab; gives when each element was painted, in ms from the start of navigation. */
async function openAndWatch(deck: DeckBrowser, path: string, selectors: string[]): Promise<number[]> {
  const page = await deck.browser.context.newPage();
  await page.addInitScript(watch, selectors);
  await page.goto(deck.browser.url(path));
  const painted = await page.waitForFunction(() => (globalThis as { painted?: number[] }).painted);
  const times = (await painted.jsonValue()) as number[];
  await setTimeout(AFTERWARDS_MS);
  await page.close();
  return times;
}

/** Runs in the page, before anything of its own. */
function watch(selectors: string[]): void {
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
  void Promise.all([firstPaint, ...selectors.map(afterFrame)]).then(([first, ...frames]) => {
    Object.assign(globalThis, { painted: frames.map((frame) => Math.max(first!, frame)) });
  });
}
