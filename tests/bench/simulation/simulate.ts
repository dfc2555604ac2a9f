import { DAY_MS, DAYS, EXAM, FIRST_SESSION, makeStudent, SESSION_SECONDS, type Student } from './student.ts';
import type { Law } from './laws.ts';
import { Random } from '../random.ts';

/** An order of practice, for one student: which item next, told how each attempt went. Moments in epoch ms. */
export interface Order {
  /** A session of practice begins. */
  begins?(at: number): void;
  /** The item to ask, by its number; null to stop for the day. */
  next(at: number): number | null;
  /** How an attempt went, once it is marked. */
  went?(item: number, at: number, isFull: boolean, seconds: number): void;
}

export interface Policy {
  name: string;
  order(student: Student, random: Random): Order;
  /** Sessions, as days from the first with their seconds; ten minutes a day unless given. */
  sessions?: { day: number; seconds: number }[];
}

const DAILY = Array.from({ length: DAYS }, (_, day) => ({ day, seconds: SESSION_SECONDS }));

export interface Outcome {
  /** Share of the exam's marks to be expected, 0 to 1. */
  marks: number;
  attempts: number;
}

/** Let one student practise in one order. */
export function simulate(law: Law, seed: number, policy: Policy, even = false): Outcome {
  const student = makeStudent(law, seed, even);
  const order = policy.order(student, new Random(seed + 99_991));
  const tries = student.items.map(() => 0);
  for (const session of policy.sessions ?? DAILY) {
    let at = FIRST_SESSION + session.day * DAY_MS;
    const end = at + session.seconds * 1000;
    order.begins?.(at);
    while (at < end) {
      const item = order.next(at);
      if (item === null) break;
      const seconds = student.seconds(item, tries[item]!);
      at += seconds * 1000;
      const trace = student.traces[item]!;
      const isFull = student.luck(item, tries[item]!) < trace.chance(at / 1000);
      tries[item]!++;
      trace.practise(at / 1000);
      order.went?.(item, at, isFull, seconds);
    }
  }
  const marks = student.traces.reduce(
    (sum, trace, i) => sum + student.weights[i]! * trace.chance(EXAM / 1000),
    0,
  );
  return { marks, attempts: tries.reduce((a, b) => a + b, 0) };
}
