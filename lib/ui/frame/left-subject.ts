import { type ErrorName, StudentError } from '#lib/model/student-error.ts';
import type { Subject } from '../slip/subject.ts';

/** Where a script that was put into the page beforehand leaves what the slip is to be about. */
const LEFT = 'plumblineSubject';

type Left = { subject: Subject } | { error: string; values: readonly string[] };

const world = globalThis as { [LEFT]?: Left | undefined };

/** Leaves what `read` gives, or why it could not, for the clip script in the same world of the page. */
export async function leaveSubject(read: () => Promise<Subject>): Promise<void> {
  try {
    world[LEFT] = { subject: await read() };
  } catch (error) {
    // Errors go by name: each script has a StudentError of its own.
    world[LEFT] =
      error instanceof StudentError
        ? { error: error.message, values: error.values }
        : { error: 'errorUnexpected', values: [String(error)] };
  }
}

/** What was left, once. Errors: the StudentError that was met in reading it. */
export function takeSubject(): Subject {
  const left = world[LEFT];
  world[LEFT] = undefined;
  if (left && 'subject' in left) return left.subject;
  throw new StudentError((left?.error ?? 'errorReloadPage') as ErrorName, ...(left?.values ?? []));
}
