import { expect, test } from 'vitest';
import { readableTerm } from '#lib/syllabus/match/readable-term.ts';

test.each([
  ['\\omega^2 = gk', 'ω² = gk'],
  ['\\tanh kh', 'tanh kh'],
  ['\\rho_{0}', 'ρ_0'],
  ['hydrostatic balance', 'hydrostatic balance'],
  ['ρ', 'ρ'],
])('%s reads %s', (surface, read) => {
  expect(readableTerm(surface)).toBe(read);
});
