import { existsSync } from 'node:fs';
import { readFile } from 'node:fs/promises';

/** The HTML documentation of mpmath, as the Debian package python-mpmath-doc installs it: prose full of formulas. */
export const DOCS = '/usr/share/doc/python-mpmath-doc/html';

/** The chapters with the most prose. */
export const CHAPTERS = [
  'calculus/sums_limits',
  'functions/hypergeometric',
  'functions/zeta',
  'functions/bessel',
  'functions/numtheory',
  'calculus/integration',
  'general',
  'identification',
  'technical',
  'calculus/inverselaplace',
  'functions/elliptic',
  'functions/orthogonal',
] as const;

/** The markup of a chapter. */
export async function readChapter(chapter: string): Promise<string> {
  if (!existsSync(DOCS)) throw new Error('Install the Debian package python-mpmath-doc, or run npm test.');
  return readFile(`${DOCS}/${chapter}.html`, 'utf8');
}
