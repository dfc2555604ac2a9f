import type { Clip } from '#lib/model/clip.ts';
import { NEW_CLIP } from '#lib/model/clip.ts';
import { type Line, NEW_LINE } from '#lib/model/item.ts';
import type { Topic } from '#lib/model/topic.ts';
import { Random } from './random.ts';
import { Words } from './words.ts';

export interface NotesSize {
  clips: number;
  lines: number;
}

export interface MadeNotes {
  clips: Clip[];
  lines: Line[];
  /** What is typed in a search: one to four words that stand together somewhere, every fourth with a letter lost. */
  asked: string[];
}

const SOURCES = 50;

/** Clips of 120 words with 25 of the student's own beside them, lines of 4 and 18 words. `now` in epoch ms. */
export function makeNotes(
  { clips, lines }: NotesSize,
  courseId: string,
  topics: Topic[],
  now: number,
): MadeNotes {
  const random = new Random(7);
  const words = new Words(random, 12_000);
  const sources = Array.from({ length: SOURCES }, () => random.id());
  const kept = () => {
    const at = now - random.below(60 * 86_400_000);
    return { id: random.id(), createdAt: at, changedAt: at, courseId };
  };
  const made: MadeNotes = { clips: [], lines: [], asked: [] };
  for (let i = 0; i < clips; i++) {
    const text = `${words.text(119)} \\(\\omega^2 = g k\\).`;
    const html = `<p>${text}</p>`;
    const place = { sourceId: random.pick(sources), topicIds: [random.pick(topics).id] };
    const rest = {
      ownWords: `${words.text(25)}.`,
      unclear: i % 5 === 0,
      headings: [],
      selectors: [],
      pictureIds: [],
    };
    made.clips.push({ ...kept(), ...place, ...NEW_CLIP, text, html, ...rest });
  }
  for (let order = 0; order < lines; order++) {
    const place = { topicId: random.pick(topics).id, clipId: null, order };
    made.lines.push({ ...kept(), ...place, ...NEW_LINE, lead: words.text(4), rest: `${words.text(18)}.` });
  }
  for (let i = 0; i < 40; i++) made.asked.push(askedFrom(random.pick(made.clips).text, i, random));
  return made;
}

function askedFrom(text: string, i: number, random: Random): string {
  const words = text.toLowerCase().split(' ');
  const from = random.below(words.length - 8);
  const asked = words.slice(from, from + 1 + (i % 4)).join(' ');
  if (i % 4 !== 0 || asked.length < 5) return asked;
  const lost = 1 + random.below(asked.length - 2);
  return asked.slice(0, lost) + asked.slice(lost + 1);
}
