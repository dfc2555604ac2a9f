import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { DEEPEST_LINE } from '#lib/model/item.ts';
import {
  type Move,
  type Placed,
  atShownDepths,
  movedIn,
  movedOut,
  movedPast,
  placeAfter,
} from '#lib/notes/lines/outline.ts';

/** Lines from a drawing such as "a -b --c d". */
const drawn = (drawing: string): Placed[] =>
  drawing.split(' ').map((word, order) => ({
    id: word.replaceAll('-', ''),
    order,
    depth: word.length - word.replaceAll('-', '').length,
  }));

const after = (lines: readonly Placed[], moves: readonly Move[]): Placed[] =>
  lines
    .map((line) => ({ ...line, ...moves.find(({ id }) => id === line.id) }))
    .sort((a, b) => a.order - b.order);

const draw = (lines: readonly Placed[]): string =>
  lines.map(({ id, depth }) => '-'.repeat(depth) + id).join(' ');

describe('moves of the outline', () => {
  test.each([
    ['a b -c d', 'b', 'a -b --c d'],
    ['a b c', 'a', 'a b c'],
    ['a --b', 'b', 'a --b'],
    ['a -b c', 'c', 'a -b -c'],
    ['a -b --c ---d ----e -----f g', 'b', 'a -b --c ---d ----e -----f g'],
  ])('in: %s, %s: %s', (before, id, then) => {
    expect(draw(after(drawn(before), movedIn(drawn(before), id)))).toBe(then);
  });

  test.each([
    ['a -b --c d', 'b', 'a b -c d'],
    ['a b', 'b', 'a b'],
  ])('out: %s, %s: %s', (before, id, then) => {
    expect(draw(after(drawn(before), movedOut(drawn(before), id)))).toBe(then);
  });

  test.each([
    ['a -b c -d', 'c', 'up', 'c -d a -b'],
    ['a -b c -d', 'a', 'down', 'c -d a -b'],
    ['a -b -c d', 'b', 'up', 'a -b -c d'],
    ['a -b -c d', 'c', 'down', 'a -b -c d'],
    ['a -b -c d', 'c', 'up', 'a -c -b d'],
    ['a b', 'b', 'down', 'a b'],
  ] as const)('%s, %s %s: %s', (before, id, way, then) => {
    expect(draw(after(drawn(before), movedPast(drawn(before), id, way)))).toBe(then);
  });

  const outline = fc
    .array(fc.integer({ min: 0, max: DEEPEST_LINE }), { minLength: 1, maxLength: 12 })
    .map((depths) => atShownDepths(depths.map((depth, i) => ({ id: `${i}`, order: i * 1.5, depth }))));

  test('never lose a line, keep the outline whole, and undo one another', () => {
    fc.assert(
      fc.property(outline, fc.nat(), (lines, which) => {
        const { id } = lines[which % lines.length]!;
        for (const [there, back] of [
          [movedIn, movedOut],
          [
            (l: Placed[], i: string) => movedPast(l, i, 'up'),
            (l: Placed[], i: string) => movedPast(l, i, 'down'),
          ],
          [
            (l: Placed[], i: string) => movedPast(l, i, 'down'),
            (l: Placed[], i: string) => movedPast(l, i, 'up'),
          ],
        ] as const) {
          const moves = there(lines, id);
          const moved = after(lines, moves);
          expect(moved.map((line) => line.id).sort()).toEqual(lines.map((line) => line.id).sort());
          expect(moved[0]!.depth).toBe(0);
          expect(moved.every(({ depth }) => depth <= DEEPEST_LINE)).toBe(true);
          expect(new Set(moved.map(({ order }) => order)).size).toBe(lines.length);
          if (moves.length > 0) expect(after(moved, back(moved, id))).toEqual(lines);
        }
      }),
    );
  });
});

test('a new line finds its place after any other, again and again', () => {
  fc.assert(
    fc.property(fc.array(fc.nat(), { maxLength: 80 }), (places) => {
      let lines: Placed[] = [];
      places.forEach((place, n) => {
        const at = (place % (lines.length + 1)) - 1;
        const expected = lines.map(({ id }) => id).toSpliced(at + 1, 0, `${n}`);
        const { order, moves } = placeAfter(lines, at);
        lines = after([...lines, { id: `${n}`, order, depth: 0 }], moves);
        expect(lines.map(({ id }) => id)).toEqual(expected);
      });
    }),
  );
  // Always at the same place: halves run out of digits after some fifty.
  let lines: Placed[] = [0, 1].map((order) => ({ id: `${order}`, order, depth: 0 }));
  for (let n = 2; n < 120; n++) {
    const { order, moves } = placeAfter(lines, 0);
    lines = after([...lines, { id: `${n}`, order, depth: 0 }], moves);
    expect(lines[1]!.id).toBe(`${n}`);
    expect(new Set(lines.map((line) => line.order)).size).toBe(lines.length);
  }
});

test('depths are shown without gaps', () => {
  expect(draw(atShownDepths(drawn('--a ---b c ----d')))).toBe('a -b c -d');
});
