import { type Item, itemOfLine, itemOfQuestion } from '#lib/model/item.ts';
import { aimOf } from '#lib/recall/next-item.ts';
import { securedTurns } from '#lib/recall/secured-days.ts';
import { type SecuredChange, type SecuredDay, securedHistory } from '#lib/syllabus/history.ts';
import type { TopicCoverage } from '#lib/syllabus/coverage.ts';
import { dayOf, examMoment } from './days.ts';
import type { Standing } from './next-up.ts';

/** How the secured part of the exam grew day by day, from the attempts alone. */
export function historyOf({ deck, progress }: Standing, rows: readonly TopicCoverage[]): SecuredDay[] {
  const examAt = examMoment(deck.course.examDay);
  const how = { clock: progress.clock, dayOf, aimOn: (at: number) => aimOf(at, examAt) };
  const changes: SecuredChange[] = [];
  const add = ({ id, kind, topicId }: Item, createdAt: number) => {
    const attempts = progress.attempts.get(id);
    if (!attempts) return;
    for (const turn of securedTurns({ kind, createdAt }, attempts, how)) changes.push({ ...turn, topicId });
  };
  for (const question of deck.questions) add(itemOfQuestion(question), question.createdAt);
  for (const line of deck.lines) add(itemOfLine(line), line.createdAt);
  return securedHistory(changes, rows);
}
