import { existsSync } from 'node:fs';
import { readFile } from 'node:fs/promises';
import { PAGES } from '#tests/tools/find-browsers.mjs';

/** Chapters with much prose: more than 300 paragraphs of it. */
export const CHAPTERS = [
  'calculus/sums_limits',
  'calculus/integration',
  'calculus/inverselaplace',
  'functions/numtheory',
  'general',
  'identification',
  'technical',
];

/** With one more, the chapters are a megabyte of HTML. */
export const MEGABYTE = [...CHAPTERS, 'functions/bessel'];

/** The markup of a chapter of the documentation of mpmath: prose full of formulas. */
export async function readChapter(chapter: string): Promise<string> {
  if (!existsSync(PAGES)) throw new Error('Install the Debian package python-mpmath-doc, or run npm test.');
  return readFile(`${PAGES}/${chapter}.html`, 'utf8');
}
