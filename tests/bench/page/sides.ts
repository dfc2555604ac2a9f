import '#lib/ui/tokens.css';
import '#lib/ui/base.css';
import '#lib/ui/print/print.css';
import { Random } from '../random.ts';
import { tookOnce } from '../timing.ts';
import { Words } from '../words.ts';
import { type LineBlock, type PrintBlock, noteBlocks } from '#lib/notes/print/blocks.ts';
import { SidesCounter } from '#lib/ui/print/sides-counter.ts';
import { aLine, aTopic } from '#tests/unit/builders.ts';

const TOPICS = 20;
const FORMULA = String.raw`\(\omega^2 = g k \tanh k h\)`;
const OPTIONS = { paper: 'a4', columns: 2 } as const;

/** Times in ms: of every change, of laying the same words out in a bare element, and of the first count. */
export interface SidesTimes {
  changes: number[];
  bare: number[];
  first: number;
  sides: number;
}

/**
 * Types into the lines of a course, a letter at a time, and counts its sides after each letter.
 * Throws where counting the changes comes to another number than counting everything anew.
 * @param letters how long the line is that is typed into; null for lines as they come
 */
export async function countSides(
  lines: number,
  repeats: number,
  letters: number | null,
): Promise<SidesTimes> {
  const random = new Random(7);
  const blocks = notesOf(lines, random, letters);
  const counter = new SidesCounter(document, OPTIONS);
  counter.set(blocks);
  await counter.ready;
  const first = tookOnce(() => {
    const other = new SidesCounter(document, OPTIONS);
    other.set(blocks);
    other.close();
  });
  const bare = document.createElement('div');
  bare.style.width = `${counter.frame.columnWidth}px`;
  document.body.append(bare);
  const times: SidesTimes = { changes: [], bare: [], first, sides: 0 };
  const places = blocks.flatMap((block, place) => (block.kind === 'line' ? [place] : []));
  for (let i = 0; i < repeats; i++) {
    const place = letters === null ? random.pick(places) : places[0]!;
    const line = blocks[place] as LineBlock;
    const changed = { ...line, rest: line.rest + random.pick([...'abcdefghij klmno']) };
    blocks[place] = changed;
    times.changes.push(
      tookOnce(() => {
        counter.change(changed.id, changed);
        return counter.sides;
      }),
    );
    times.bare.push(
      tookOnce(() => {
        bare.textContent = `${changed.lead} ${changed.rest}`;
        return bare.getBoundingClientRect().height;
      }),
    );
    // A person does not type in bursts: the browser paints between letters.
    await new Promise((resolve) => requestAnimationFrame(resolve));
  }
  times.sides = counter.sides;
  const anew = new SidesCounter(document, OPTIONS);
  anew.set(blocks);
  await anew.ready;
  if (anew.sides !== counter.sides)
    throw new Error(`${counter.sides} sides by changes, ${anew.sides} in all`);
  if (JSON.stringify(anew.pages) !== JSON.stringify(counter.pages)) throw new Error('other pages by changes');
  for (const one of [anew, counter]) one.close();
  bare.remove();
  return times;
}

function notesOf(count: number, random: Random, letters: number | null): PrintBlock[] {
  const words = new Words(random);
  const topics = Array.from({ length: TOPICS }, (_, order) =>
    aTopic({ id: random.id(), order, title: words.text(3) }),
  );
  const lines = Array.from({ length: count }, (_, order) => {
    const formula = random.next() < 0.2 ? ` ${FORMULA} ${words.text(3)}` : '';
    const rest =
      order === 0 && letters !== null
        ? words.text(letters).slice(0, letters)
        : words.text(12 + random.below(20)) + formula;
    const topicId = topics[Math.floor((order * TOPICS) / count)]!.id;
    return aLine({ id: random.id(), topicId, order, depth: random.below(3), lead: words.text(2), rest });
  });
  return noteBlocks(topics, lines);
}
