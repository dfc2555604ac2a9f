import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { type MeasuredBlock, type Side, paginate, sidesByTopic } from '#lib/notes/print/paginate.ts';

const HEIGHT = 100;

const block = (height: number, over: Partial<MeasuredBlock> = {}): MeasuredBlock => ({
  gap: 0,
  parts: [height],
  keepsNext: false,
  ...over,
});
const lines = (count: number, height = 10): MeasuredBlock => block(0, { parts: Array(count).fill(height) });

const frames = fc.record({ columns: fc.constantFrom(1, 2), columnHeight: fc.constant(HEIGHT) });
const parts = (tallest: number) =>
  fc.oneof(
    { weight: 4, arbitrary: fc.integer({ min: 1, max: tallest }).map((height) => [height]) },
    { weight: 1, arbitrary: fc.array(fc.integer({ min: 5, max: 20 }), { minLength: 2, maxLength: 40 }) },
  );
const blocksUpTo = (tallest: number) =>
  fc.array(
    fc.record({
      gap: fc.integer({ min: 0, max: 8 }),
      parts: parts(tallest),
      keepsNext: fc.boolean(),
    }),
    { maxLength: 40 },
  );
/** As the notes are: headings are short and few stand together. */
const notes = fc
  .array(
    fc.record({
      gap: fc.integer({ min: 0, max: 8 }),
      parts: parts(45),
      keepsNext: fc.constant(false),
    }),
    { maxLength: 30 },
  )
  .chain((all) =>
    fc
      .array(fc.integer({ min: 0, max: 2 }), { minLength: all.length, maxLength: all.length })
      .map((heads) =>
        all.flatMap((one, i) => [
          ...Array.from({ length: heads[i]! }, () => block(6, { gap: 3, keepsNext: true })),
          one,
        ]),
      ),
  );

const columnsOf = (sides: Side[]) => sides.flat().filter((column) => column.length > 0);
const bottom = (column: Side[number]) => Math.max(...column.map(({ top, height }) => top + height));

describe('laying blocks into columns', () => {
  test('every part of every block stands once, in order, and heights are those of the parts', () => {
    fc.assert(
      fc.property(blocksUpTo(130), frames, (blocks, frame) => {
        const placed = columnsOf(paginate(blocks, frame)).flat();
        const order = placed.flatMap(({ block: index, from, to }) =>
          Array.from({ length: to - from }, (_, i) => [index, from + i]),
        );
        expect(order).toEqual(blocks.flatMap((one, index) => one.parts.map((_, part) => [index, part])));
        for (const { block: index, from, to, height } of placed)
          expect(height).toBe(blocks[index]!.parts.slice(from, to).reduce((sum, part) => sum + part, 0));
      }),
    );
  });

  test('no column is over its height, but where one part alone is; nothing lies on anything else', () => {
    fc.assert(
      fc.property(blocksUpTo(130), frames, (blocks, frame) => {
        for (const column of columnsOf(paginate(blocks, frame))) {
          const [first] = column;
          const alone = column.length === 1 && first!.to - first!.from === 1;
          if (!alone) expect(bottom(column)).toBeLessThanOrEqual(HEIGHT);
          let below = 0;
          for (const { block: index, from, top, height } of column) {
            expect(top).toBe(below + (below > 0 && from === 0 ? blocks[index]!.gap : 0));
            below = top + height;
          }
        }
      }),
    );
  });

  test('there is no empty side, and no empty column before a filled one', () => {
    fc.assert(
      fc.property(blocksUpTo(130), frames, (blocks, frame) => {
        const sides = paginate(blocks, frame);
        for (const side of sides) expect(side).toHaveLength(frame.columns);
        const filled = sides.flat().map((column) => column.length > 0);
        expect(filled.lastIndexOf(true)).toBe(filled.filter(Boolean).length - 1);
        if (sides.length > 0) expect(sides.at(-1)![0]!.length).toBeGreaterThan(0);
      }),
    );
  });

  test('no heading ends a column, and no end of a long text stands alone', () => {
    fc.assert(
      fc.property(notes, frames, (blocks, frame) => {
        const columns = columnsOf(paginate(blocks, frame));
        for (const [i, column] of columns.entries()) {
          const last = column.at(-1)!;
          if (i < columns.length - 1) expect(blocks[last.block]!.keepsNext).toBe(false);
          for (const { block: index, from, to } of column)
            if (blocks[index]!.parts.length > 1) expect(to - from).toBeGreaterThan(1);
        }
      }),
    );
  });

  test('a column ends only where what follows does not fit', () => {
    fc.assert(
      fc.property(notes, frames, (blocks, frame) => {
        const columns = columnsOf(paginate(blocks, frame));
        for (const [i, column] of columns.slice(0, -1).entries()) {
          // What has to stay together at the top of the next column.
          const next = columns[i + 1]!;
          const { gap } = blocks[next[0]!.block]!;
          let needs = next[0]!.from === 0 ? gap : 0;
          for (const { block: index, from, to, top } of next) {
            const { parts: own, keepsNext } = blocks[index]!;
            if (index !== next[0]!.block) needs = gap + top;
            const least =
              own.length === 1 ? 1 : to === own.length && to - from <= 3 ? to - from : from === 0 ? 2 : 1;
            needs += own.slice(from, from + least).reduce((sum, part) => sum + part, 0);
            if (!keepsNext) break;
          }
          expect(bottom(column) + needs).toBeGreaterThan(HEIGHT);
        }
      }),
    );
  });

  test('a further block, or a taller one, never makes fewer sides', () => {
    fc.assert(
      fc.property(notes, frames, fc.nat(), fc.integer({ min: 1, max: 30 }), (blocks, frame, at, more) => {
        const before = paginate(blocks, frame).length;
        const longer = [...blocks, block(more)];
        expect(paginate(longer, frame).length).toBeGreaterThanOrEqual(before);
        const i = blocks.length === 0 ? 0 : at % blocks.length;
        const taller = blocks.map((one, index) => {
          const whole = index === i && one.parts.length === 1 && !one.keepsNext;
          return whole ? { ...one, parts: [one.parts[0]! + Math.min(more, 30)] } : one;
        });
        expect(paginate(taller, frame).length).toBeGreaterThanOrEqual(before);
      }),
    );
  });

  test('nothing takes no side, and a block of no height takes one', () => {
    expect(paginate([], { columns: 2, columnHeight: HEIGHT })).toEqual([]);
    expect(paginate([block(0)], { columns: 2, columnHeight: HEIGHT })).toHaveLength(1);
  });

  test('a long text goes on over as many columns as it needs', () => {
    const sides = paginate([block(95), lines(22)], { columns: 2, columnHeight: HEIGHT });
    expect(sides.flat().map((column) => column.map(({ from, to }) => [from, to]))).toEqual([
      [[0, 1]],
      [[0, 10]],
      [[10, 20]],
      [[20, 22]],
    ]);
  });

  test('its last line takes one with it', () => {
    const sides = paginate([lines(11)], { columns: 1, columnHeight: HEIGHT });
    expect(sides.flat().map((column) => column[0]!.to)).toEqual([9, 11]);
  });

  test('a heading and what follows it stay together where they just fill a column', () => {
    const blocks = [block(50), block(30, { keepsNext: true }), block(70)];
    const sides = paginate(blocks, { columns: 1, columnHeight: HEIGHT });
    expect(sides.flat().map((column) => column.map((placed) => placed.block))).toEqual([[0], [1, 2]]);
  });

  test('headings that fill more than a column are parted before the last that fits', () => {
    const heading = block(30, { keepsNext: true });
    const sides = paginate([heading, heading, heading, block(50)], { columns: 1, columnHeight: HEIGHT });
    expect(sides.flat().map((column) => column.map((placed) => placed.block))).toEqual([
      [0, 1],
      [2, 3],
    ]);
  });

  test('one million lines in a text are laid out', () => {
    const sides = paginate([lines(1_000_000, 1)], { columns: 2, columnHeight: HEIGHT });
    expect(sides).toHaveLength(5000);
  });
});

test('the sides of each topic are its share of their columns', () => {
  const blocks = [
    { ...block(20, { gap: 5 }), topicId: 'a' },
    { ...block(75), topicId: 'a' },
    { ...lines(5), topicId: 'b' },
  ];
  const shares = sidesByTopic(blocks, { columns: 2, columnHeight: HEIGHT });
  expect([...shares]).toEqual([
    ['a', 0.5],
    ['b', 0.25],
  ]);
});
