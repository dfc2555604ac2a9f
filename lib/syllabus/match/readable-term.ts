import { greekLetterOf } from './maths-words.ts';

const RAISED: Record<string, string> = { 0: '⁰', 1: '¹', 2: '²', 3: '³', 4: '⁴', n: 'ⁿ' };

/** A term as a student reads it: TeX in it becomes the signs and words that it stands for. */
export function readableTerm(surface: string): string {
  return surface
    .replace(/\\([A-Za-z]+)/g, (_, name: string) => greekLetterOf(name) ?? name)
    .replace(/\^\{?([0-4n])\}?/g, (_, sign: string) => RAISED[sign] ?? '')
    .replace(/[\\{}$]/g, '')
    .replace(/\s+/g, ' ')
    .trim();
}
