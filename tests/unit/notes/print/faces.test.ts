import fc from 'fast-check';
import { expect, test } from 'vitest';
import { facesOf } from '#lib/notes/print/faces.ts';
import { paginate } from '#lib/notes/print/paginate.ts';
import { columnLeft, frameOf } from '#lib/notes/print/paper.ts';

test('whatever is turned over its long edge has every block of the front behind itself', () => {
  const papers = fc.constantFrom('a4', 'letter');
  const columns = fc.constantFrom(1, 2);
  const heights = fc.array(fc.integer({ min: 20, max: 900 }), { minLength: 1, maxLength: 40 });
  fc.assert(
    fc.property(papers, columns, heights, (paper, count, all) => {
      const frame = frameOf({ paper, columns: count });
      const blocks = all.map((height) => ({ gap: 0, parts: [height], keepsNext: false }));
      const faces = facesOf(paginate(blocks, frame));
      expect(faces.map(({ isFront }) => isFront)).toEqual(faces.map((_, i) => i % 2 === 0));
      for (let sheet = 0; sheet < faces.length; sheet += 2) {
        const boxes = [faces[sheet]!, faces[sheet + 1]!].map((face) =>
          face.columns.flatMap(({ column }, across) =>
            column.map(({ block, top, height }) => {
              const left = columnLeft(frame, across);
              // Paper that is turned over its long edge: left and right change places, up and down do not.
              const x = face.isFront ? left : frame.page.width - left - frame.columnWidth;
              return { block, x: Math.round(x * 1e6), top, height };
            }),
          ),
        );
        const sorted = boxes.map((face) => face.sort((a, b) => a.block - b.block));
        expect(sorted[1]).toEqual(sorted[0]);
      }
    }),
  );
});

test('columns keep their place in reading order', () => {
  const sides = paginate(
    [60, 60].map((height) => ({ gap: 0, parts: [height], keepsNext: false })),
    {
      columns: 2,
      columnHeight: 100,
    },
  );
  const [front, back] = facesOf(sides);
  expect(front!.columns.map(({ place }) => place)).toEqual([0, 1]);
  expect(back!.columns.map(({ place }) => place)).toEqual([1, 0]);
});
