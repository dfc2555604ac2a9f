import type { Id } from '#lib/model/basics.ts';
import type { Problem } from '#lib/model/problem.ts';
import type { Redo } from '#lib/model/redo.ts';

/** A starred problem, as its redos left it. */
export interface ColdProblem {
  problem: Problem;
  /** All of them, the oldest first. */
  redos: Redo[];
  /** The part of its marks that the latest redo got, 0 to 1; null before any. */
  latest: number | null;
}

/**
 * Starred problems that are to be redone without notes, in their order: those never redone, hard ones before important
 * ones, then those that lost the greatest part of their marks the last time, the longest-unseen first. One that got
 * full marks the last time is done.
 */
export function coldProblems(problems: readonly Problem[], redos: readonly Redo[]): ColdProblem[] {
  const byProblem = Map.groupBy(redos, ({ problemId }): Id => problemId);
  return problems
    .filter(({ star }) => star !== null)
    .map((problem) => coldProblem(problem, byProblem.get(problem.id) ?? []))
    .filter(({ latest }) => latest === null || latest < 1)
    .sort(
      (a, b) =>
        (a.latest ?? -1) - (b.latest ?? -1) ||
        lastSeen(a) - lastSeen(b) ||
        Number(b.problem.star === 'hardForMe') - Number(a.problem.star === 'hardForMe') ||
        a.problem.createdAt - b.problem.createdAt,
    );
}

function coldProblem(problem: Problem, redos: readonly Redo[]): ColdProblem {
  const inOrder = redos.toSorted((a, b) => a.at - b.at);
  const last = inOrder.at(-1);
  return { problem, redos: inOrder, latest: last ? last.marks / last.outOf : null };
}

const lastSeen = ({ redos }: ColdProblem): number => redos.at(-1)?.at ?? 0;
