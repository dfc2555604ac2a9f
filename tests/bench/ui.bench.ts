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
    goal: { atMost: 100, more: true, toCome: true },
  },
];

/** From the start of navigation until the popup has painted the first question, against an empty page; and until a round can start. */
export async function figures(): Promise<Figure[]> {
  const all: Figure[] = [];
  for (const one of CASES) all.push(...(await withDeckBrowser(one.size, (deck) => measure(deck, one))));
  return all;
}

async function measure(deck: DeckBrowser, { name, repeats, goal }: Case): Promise<Figure[]> {
  await deck.openDeskOnce();
  const ready: number[] = [];
  const popup = async () => {
    await setTimeout(UNTIL_CLOSED_MS);
    // It stays open until all is read: a read left in the middle would hold up the next opening.
    const [question, round] = await openAndWatch(deck, 'popup.html', ['.asks', 'button.main:enabled']);
    ready.push(round!);
    return question!;
  };
  const empty = async () => (await openAndWatch(deck, 'empty.html', ['p']))[0]!;
  const { ours, other } = await inTurns({ repeats, warmUp: WARM_UP }, popup, empty);
  const against = { what: 'empty extension page', value: other };
  const round = name.replace('first-question', 'round-ready');
  return [
    figure({ name: `${name}-ms`, value: ours, unit: 'ms', against, ...(goal && { goal }) }),
    figure({ name: `${round}-ms`, value: median(ready.slice(WARM_UP)), unit: 'ms', against }),
  ];
}

/** Opens a page in a fresh tab; gives when each element was painted, in ms from the start of navigation. */
async function openAndWatch(deck: DeckBrowser, path: string, selectors: string[]): Promise<number[]> {
  const page = await deck.browser.context.newPage();
  await page.addInitScript(watch, selectors);
  await page.goto(deck.browser.url(path));
  const painted = await page.waitForFunction(() => (globalThis as { painted?: number[] }).painted);
  const times = (await painted.jsonValue()) as number[];
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
