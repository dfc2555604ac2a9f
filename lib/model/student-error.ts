/** Names of messages in the locale file that say what went wrong and what to do about it. */
export type ErrorName = `error${Capitalize<string>}`;

/**
 * Something the student must be told. `message` is the name of a message in the locale file, and `values` fill it;
 * screens show it through `tell` in lib/ui/text.ts.
 */
export class StudentError extends Error {
  readonly values: readonly string[];

  constructor(name: ErrorName, ...values: (string | number)[]) {
    super(name);
    this.name = 'StudentError';
    this.values = values.map(String);
  }
}
