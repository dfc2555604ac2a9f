import { browser } from 'wxt/browser';
import type messages from '#assets/public/_locales/en/messages.json';
import { StudentError } from '#lib/model/student-error.ts';

/** The name of a message in the locale file. */
export type TextName = keyof typeof messages;

type PluralBase<N extends string> = N extends `${infer Base}One` ? Base : never;
/** The first part of a pair of messages that ends in One and Other. */
export type PluralName = PluralBase<TextName>;

/** A message of the locale file with its values ($1, $2, ...) put in. */
export function t(name: TextName, ...values: (string | number)[]): string {
  return browser.i18n.getMessage(name as never, values.map(String));
}

/** A message that counts: its One or Other form, $1 being the number. */
export function tn(name: PluralName, count: number, ...values: (string | number)[]): string {
  const form = new Intl.PluralRules(browser.i18n.getUILanguage()).select(count) === 'one' ? 'One' : 'Other';
  return t(`${name}${form}` as TextName, count, ...values);
}

/** What to tell the student about an error: StudentErrors in their own words, anything else as unexpected. */
export function tell(error: unknown): string {
  if (error instanceof StudentError) {
    const text = t(error.message as TextName, ...error.values);
    if (text !== '') return text;
  }
  return t('errorUnexpected', error instanceof Error ? error.message : String(error));
}

/** A part of a whole, 0 to 1, in per cent, with at most so many digits behind the point. */
export const percent = (part: number, digits = 0): string =>
  part.toLocaleString(undefined, { style: 'percent', maximumFractionDigits: digits });
