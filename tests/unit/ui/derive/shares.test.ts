import fc from 'fast-check';
import { expect, test } from 'vitest';
import { examShares } from '#lib/syllabus/tree.ts';
import { sharesForItems } from '#lib/ui/derive/shares.ts';
import { aTopic, newId } from '../../builders.ts';
import { deep, shallow, tides, waves } from '../a-course.ts';

const topics = [waves, deep, shallow, tides];
const sharesOf = (all: typeof topics) => sharesForItems(all, examShares(all));

test('a leaf has its own share, a topic above it the mean of the leaves below', () => {
  const shares = sharesOf(topics);
  expect(shares.get(deep.id)).toBeCloseTo(0.3, 12);
  expect(shares.get(shallow.id)).toBeCloseTo(0.2, 12);
  expect(shares.get(tides.id)).toBeCloseTo(0.5, 12);
  expect(shares.get(waves.id)).toBeCloseTo(0.25, 12);
  expect(shares.size).toBe(4);
});

test('a topic that is off has no share, and neither has what stands below it', () => {
  const shares = sharesOf([{ ...waves, off: true }, deep, shallow, tides]);
  expect([...shares]).toEqual([[tides.id, 1]]);
});

test('a topic at the top counts leaves of every depth alike', () => {
  const [top, middle] = [aTopic(), aTopic()];
  const leaf = () => newId();
  const rows = [
    top,
    { ...middle, parentId: top.id },
    aTopic({ id: leaf(), parentId: middle.id }),
    aTopic({ id: leaf(), parentId: middle.id }),
    aTopic({ id: leaf(), parentId: top.id }),
  ];
  expect(sharesOf(rows).get(top.id)).toBeCloseTo(1 / 3, 12);
  expect(sharesOf(rows).get(middle.id)).toBeCloseTo(1 / 4, 12);
});

test('topics that stand in a circle, or whose parent is gone, end the way up', () => {
  const [one, other] = [aTopic(), aTopic()];
  const circle = [
    { ...one, parentId: other.id },
    { ...other, parentId: one.id },
  ];
  const shares = sharesForItems(circle, new Map([[one.id, 0.4]]));
  expect(shares.get(one.id)).toBe(0.4);
  expect(shares.get(other.id)).toBe(0.4);
  expect([...sharesForItems([aTopic({ id: one.id, parentId: newId() })], new Map([[one.id, 1]]))]).toEqual([
    [one.id, 1],
  ]);
});

test('in any tree every share lies between the least and the greatest leaf below it', () => {
  const tree = fc.array(fc.nat(), { minLength: 1, maxLength: 30 }).map((parents) => {
    const all = parents.map((_, order) => aTopic({ order, parentId: null }));
    return all.map((topic, i) => ({
      ...topic,
      parentId: i > 0 && parents[i]! % 4 ? all[parents[i]! % i]!.id : null,
    }));
  });
  fc.assert(
    fc.property(tree, (all) => {
      const leaves = examShares(all);
      const shares = sharesForItems(all, leaves);
      const values = [...leaves.values()];
      expect(shares.size).toBe(all.length);
      for (const [id, share] of leaves) expect(shares.get(id)).toBe(share);
      for (const share of shares.values()) {
        expect(share).toBeGreaterThanOrEqual(Math.min(...values) - 1e-12);
        expect(share).toBeLessThanOrEqual(Math.max(...values) + 1e-12);
      }
    }),
  );
});
