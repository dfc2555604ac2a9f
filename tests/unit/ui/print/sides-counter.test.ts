// @vitest-environment jsdom
import fc from 'fast-check';
import { afterEach, beforeEach, describe, expect, test, vi } from 'vitest';
import { type LineBlock, type PrintBlock, lineBlock } from '#lib/notes/print/blocks.ts';
import { frameOf } from '#lib/notes/print/paper.ts';
import { SidesCounter } from '#lib/ui/print/sides-counter.ts';
import { newId } from '#tests/unit/builders.ts';
import { fakeExtension } from '../fake-extension.ts';

const A4 = { paper: 'a4', columns: 2 } as const;
const { columnHeight } = frameOf(A4);

/** How many elements were measured. */
let looks = 0;

beforeEach(() => {
  fakeExtension();
  looks = 0;
  // Nothing is laid out here: forty letters make a line of 16 pixels.
  vi.spyOn(HTMLElement.prototype, 'getBoundingClientRect').mockImplementation(function (this: HTMLElement) {
    looks++;
    return new DOMRect(0, 0, 300, 16 * Math.max(1, Math.ceil(this.textContent.length / 40)));
  });
});
afterEach(() => {
  vi.restoreAllMocks();
  document.body.replaceChildren();
});

const topicId = newId();
const aLine = (over: Partial<LineBlock> = {}): LineBlock =>
  lineBlock({ id: newId(), topicId, lead: 'Tides', rest: 'come twice a day', depth: 0, ...over });
const lines = (count: number): LineBlock[] => Array.from({ length: count }, () => aLine());

function counting(blocks: PrintBlock[], changed?: () => void, Counter = SidesCounter): SidesCounter {
  const counter = new Counter(document, A4, changed);
  counter.set(blocks);
  return counter;
}

/** A counter on a page that has not loaded the reader of TeX yet. */
async function countingAnew(blocks: PrintBlock[], changed?: () => void): Promise<SidesCounter> {
  vi.resetModules();
  const { SidesCounter: Counter } = await import('#lib/ui/print/sides-counter.ts');
  return counting(blocks, changed, Counter);
}

describe('the count', () => {
  test('is what fits: lines of 16 pixels, 3 apart, in two columns', () => {
    const perColumn = Math.floor((columnHeight + 3) / 19);
    expect(counting(lines(2 * perColumn)).sides).toBe(1);
    expect(counting(lines(2 * perColumn + 1)).sides).toBe(2);
    expect(counting([]).sides).toBe(0);
  });

  test('after changes is what it is when everything is counted anew', () => {
    const words = fc.string({ maxLength: 200 }).map((text) => text.replaceAll(/[$\\]/g, ''));
    const edit = fc.record({ at: fc.nat(), lead: words, rest: words, depth: fc.nat({ max: 5 }) });
    fc.assert(
      fc.property(fc.array(edit, { maxLength: 20 }), (edits) => {
        const blocks = lines(120);
        const counter = counting(blocks);
        for (const { at, ...over } of edits) {
          const place = at % blocks.length;
          blocks[place] = { ...blocks[place]!, ...over };
          counter.change(blocks[place].id, blocks[place]);
        }
        const anew = counting(blocks);
        expect(counter.pages).toEqual(anew.pages);
        expect([...counter.byTopic]).toEqual([...anew.byTopic]);
        counter.close();
        anew.close();
      }),
      { numRuns: 20 },
    );
  });

  test('of one changed line among 400 lays out that line alone', () => {
    const blocks = lines(400).map((line, i) => ({ ...line, rest: `number ${i}` }));
    const counter = counting(blocks);
    looks = 0;
    counter.change(blocks[200]!.id, { ...blocks[200]!, rest: 'other words' });
    expect(counter.sides).toBeGreaterThan(1);
    expect(looks).toBe(1);
    counter.set(blocks.toReversed());
    expect(looks).toBe(1);
  });

  test('says what part of a side each topic takes', () => {
    const other = newId();
    const blocks = [...lines(2), aLine({ topicId: other })];
    const shares = counting(blocks).byTopic;
    expect(shares.get(topicId)).toBeCloseTo((2 * 19) / columnHeight / 2, 10);
    expect(shares.get(other)).toBeCloseTo(19 / columnHeight / 2, 10);
  });

  test('of a line that is not there is an error', () => {
    expect(() => counting(lines(3)).change(newId(), aLine())).toThrow(RangeError);
  });

  test('a line above deeper ones keeps them once it has no rest', () => {
    const blocks = [aLine(), aLine({ depth: 1 })];
    const counter = counting(blocks);
    expect(counter.laid[0]!.keepsNext).toBe(false);
    counter.change(blocks[0]!.id, { ...blocks[0]!, rest: '' });
    expect(counter.laid[0]!.keepsNext).toBe(true);
    counter.change(blocks[1]!.id, { ...blocks[1]!, depth: 0 });
    expect(counter.laid[0]!.keepsNext).toBe(false);
  });
});

describe('formulas', () => {
  test('are set once their reader is there, and the count is told of', async () => {
    const changed = vi.fn();
    const blocks = [aLine({ rest: String.raw`go at \(c = \sqrt{g h}\)` })];
    const counter = await countingAnew(blocks, changed);
    expect(counter.formulas).toBeNull();
    expect(counter.isReady).toBe(false);
    await counter.ready;
    expect(counter.isReady).toBe(true);
    expect(changed).toHaveBeenCalledTimes(1);
    expect(counter.formulas!.nodesOf('c', false)!.querySelector('mi')!.textContent).toBe('c');
    expect(counter.formulas!.nodesOf(String.raw`\frac{1`, false)).toBeNull();
  });

  test('that do not parse are words, and so may be parted', async () => {
    const counter = await countingAnew([aLine({ rest: String.raw`go at \(\frac{1\)` })]);
    await counter.ready;
    expect(counter.laid[0]!.cells[0]![0]!.at(-1)).toEqual({
      kind: 'words',
      style: 'rest',
      text: String.raw`\frac{1`,
    });
  });

  test('a counter that was closed hears nothing more and leaves nothing behind', async () => {
    const changed = vi.fn();
    const counter = await countingAnew([aLine({ rest: String.raw`\(c\)` })], changed);
    counter.close();
    await counter.ready;
    expect(changed).not.toHaveBeenCalled();
    expect(document.body.children).toHaveLength(0);
  });
});

test('once loaded, the reader of TeX is there for every counter at once', async () => {
  const blocks = [aLine({ rest: String.raw`\(c\)` })];
  await counting(blocks).ready;
  const changed = vi.fn();
  const counter = counting(blocks, changed);
  expect(counter.isReady).toBe(true);
  await counter.ready;
  expect(changed).not.toHaveBeenCalled();
});

test('what is measured is out of sight, of the keyboard and of screen readers', () => {
  counting(lines(1));
  const host = document.body.firstElementChild as HTMLElement;
  expect(host.className).toContain('print-measure');
  expect(host.getAttribute('aria-hidden')).toBe('true');
  expect(host.inert).toBe(true);
  expect(host.children).toHaveLength(0);
});
