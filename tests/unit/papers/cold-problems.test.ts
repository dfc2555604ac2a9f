import { expect, test } from 'vitest';
import { coldProblems } from '#lib/papers/cold-problems.ts';
import { aProblem, aRedo, MORNING } from '../builders.ts';

test('starred problems come in the order in which they are to be redone', () => {
  const problem = (title: string, over: Parameters<typeof aProblem>[0] = {}) => aProblem({ title, ...over });
  const redo = (of: { id: string }, marks: number, day: number) =>
    aRedo({ problemId: of.id, marks, outOf: 6, at: MORNING + day * 86_400_000 });
  const plain = problem('plain', { star: null });
  const important = problem('important', { star: 'important' });
  const hard = problem('hard');
  const half = problem('half');
  const halfLongAgo = problem('half, long ago');
  const nearly = problem('nearly');
  const done = problem('done');
  const all = [plain, important, done, nearly, half, halfLongAgo, hard];
  const redos = [
    redo(done, 6, 3),
    redo(done, 2, 1),
    redo(nearly, 5, 2),
    redo(half, 3, 2),
    redo(halfLongAgo, 3, 1),
    redo(plain, 0, 1),
  ];
  const cold = coldProblems(all, redos);
  expect(cold.map(({ problem: { title } }) => title)).toEqual([
    'hard',
    'important',
    'half, long ago',
    'half',
    'nearly',
  ]);
  expect(cold.map(({ latest }) => latest)).toEqual([null, null, 0.5, 0.5, 5 / 6]);
});

test('one that lost marks after full ones is back', () => {
  const hard = aProblem();
  const redos = [
    aRedo({ problemId: hard.id, marks: 5, at: MORNING + 9 }),
    aRedo({ problemId: hard.id, marks: 6, at: MORNING }),
  ];
  const [cold] = coldProblems([hard], redos);
  expect(cold!.redos.map(({ marks }) => marks)).toEqual([6, 5]);
  expect(coldProblems([hard], redos.slice(1))).toEqual([]);
});
