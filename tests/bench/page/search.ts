import MiniSearch from 'minisearch';
import type { NotesSize } from '../make-notes.ts';
import { makeNotes } from '../make-notes.ts';
import { median, took, tookOnce } from '../timing.ts';
import { excerptOf } from '#lib/notes/search/excerpt.ts';
import { NO_FILTER } from '#lib/notes/search/filter.ts';
import { changeLine } from '#lib/store/actions/items.ts';
import { DeckSearch } from '#lib/store/deck-search.ts';
import { readBy } from '#lib/store/read.ts';
import type { Db } from '#lib/store/schema.ts';

/** As the desk's search page shows. */
const SHOWN = 5;
/** What disturbs the machine holds up one turn, not the key stroke. */
const TURNS = 3;

export interface SearchTimes {
  /** Each key stroke, in ms, the middle of three turns: ours with the excerpts that are shown, MiniSearch alone, a scan of all text alone. */
  keys: { ours: number[]; mini: number[]; scan: number[] };
  /** Until everything is in the index, reading included, in ms. */
  ready: { ours: number; mini: number };
  /** The longest that the page was held up meanwhile, in ms. */
  longestBlock: number;
  /** From a line being written until it is found, and the same without the search, in ms. */
  follow: { ours: number; bare: number };
  things: number;
}

const openSearch = (db: Db, courseId: string, closing: AbortSignal) =>
  new DeckSearch(db, courseId, closing, (error) => {
    throw error;
  });

/** Runs `work`, and notes the longest time that a timer had to wait meanwhile. */
async function longestBlock(work: () => Promise<unknown>): Promise<number> {
  let longest = 0;
  let before = performance.now();
  const timer = setInterval(() => {
    const now = performance.now();
    longest = Math.max(longest, now - before);
    before = now;
  }, 0);
  await work();
  clearInterval(timer);
  return longest;
}

interface Text {
  id: string;
  a: string;
  b: string;
}

async function textsOf(db: Db, courseId: string): Promise<Text[]> {
  const [clips, lines, questions] = await Promise.all([
    readBy(db, 'clips', 'course', courseId),
    readBy(db, 'lines', 'course', courseId),
    readBy(db, 'questions', 'course', courseId),
  ]);
  return [
    ...clips.map(({ id, text, ownWords }) => ({ id, a: text, b: ownWords })),
    ...lines.map(({ id, lead, rest }) => ({ id, a: lead, b: rest })),
    ...questions.map(({ id, prompt, answer }) => ({ id, a: prompt, b: answer })),
  ];
}

const miniSearch = () => new MiniSearch<Text>({ fields: ['a', 'b'] });

/** MiniSearch used as its manual has it for a search as you type. */
function askMini(mini: MiniSearch<Text>, text: string): unknown {
  return mini.search(text, {
    combineWith: 'AND',
    prefix: (_term, i, terms) => i === terms.length - 1,
    fuzzy: (term) => (term.length > 3 ? 0.2 : false),
  });
}

function scan(lowered: readonly { id: string; text: string }[], text: string): unknown {
  const words = text.toLowerCase().split(/\s+/).filter(Boolean);
  return lowered.filter((one) => words.every((word) => one.text.includes(word)));
}

export async function measureSearch(db: Db, size: NotesSize, repeats: number): Promise<SearchTimes> {
  const course = (await db.getAll('courses'))[0]!;
  const topics = await readBy(db, 'topics', 'course', course.id);
  const { asked } = makeNotes(size, course.id, topics, course.createdAt);
  const ready = { ours: [] as number[], mini: [] as number[] };
  const blocks: number[] = [];
  for (let i = 0; i < repeats; i++) {
    const closing = new AbortController();
    const whole = () => openSearch(db, course.id, closing.signal).ready;
    blocks.push(await longestBlock(async () => ready.ours.push(await took(whole))));
    closing.abort();
    ready.mini.push(
      await took(async () => miniSearch().addAllAsync(await textsOf(db, course.id), { chunkSize: 100 })),
    );
  }
  const closing = new AbortController();
  const search = openSearch(db, course.id, closing.signal);
  await search.ready;
  const texts = await textsOf(db, course.id);
  const mini = miniSearch();
  mini.addAll(texts);
  const lowered = texts.map(({ id, a, b }) => ({ id, text: `${a} ${b}`.toLowerCase() }));
  const ours = (text: string) => {
    const { kinds, marked } = search.search(text, NO_FILTER, SHOWN);
    return kinds.map(({ found }) =>
      found.map(({ document }) =>
        document.fields.map((field) => excerptOf(field.text, marked, search.reader)),
      ),
    );
  };
  const keys: SearchTimes['keys'] = { ours: [], mini: [], scan: [] };
  for (const text of asked.slice(0, 5)) {
    ours(text);
    askMini(mini, text);
    scan(lowered, text);
  }
  for (const text of asked)
    for (let typed = 1; typed <= text.length; typed++) {
      const part = text.slice(0, typed);
      const turns: SearchTimes['keys'] = { ours: [], mini: [], scan: [] };
      for (let turn = 0; turn < TURNS; turn++) {
        turns.ours.push(tookOnce(() => ours(part)));
        turns.mini.push(tookOnce(() => askMini(mini, part)));
        turns.scan.push(tookOnce(() => scan(lowered, part)));
      }
      for (const one of ['ours', 'mini', 'scan'] as const) keys[one].push(median(turns[one]));
    }
  const follow = await measureFollow(db, search, course.id);
  closing.abort();
  return {
    keys,
    ready: { ours: median(ready.ours), mini: median(ready.mini) },
    longestBlock: Math.max(...blocks),
    follow,
    things: texts.length,
  };
}

async function measureFollow(db: Db, search: DeckSearch, courseId: string): Promise<SearchTimes['follow']> {
  const lines = (await readBy(db, 'lines', 'course', courseId)).slice(0, 40);
  const times = { ours: [] as number[], bare: [] as number[] };
  for (const [i, { id, lead, rest }] of lines.entries()) {
    const word = `followed${i}`;
    const start = performance.now();
    await changeLine(db, id, { lead, rest: `${rest} ${word}` }, Date.now());
    times.bare.push(performance.now() - start);
    await search.ready;
    if (search.search(word, NO_FILTER, 1).count !== 1) throw new Error('A changed line was not found');
    times.ours.push(performance.now() - start);
    await changeLine(db, id, { lead, rest }, Date.now());
    await search.ready;
  }
  return { ours: median(times.ours), bare: median(times.bare) };
}
