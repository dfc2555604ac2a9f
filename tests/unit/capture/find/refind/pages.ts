import { existsSync } from 'node:fs';
import { readFile } from 'node:fs/promises';

/** The HTML documentation of mpmath, as the Debian package python-mpmath-doc installs it: prose full of formulas. */
const DOCS = '/usr/share/doc/python-mpmath-doc/html';

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

/** The markup of a chapter. */
export async function readChapter(chapter: string): Promise<string> {
  if (!existsSync(DOCS)) throw new Error('Install the Debian package python-mpmath-doc, or run npm test.');
  return readFile(`${DOCS}/${chapter}.html`, 'utf8');
}
