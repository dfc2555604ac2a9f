import { describe, expect, it } from 'vitest';
import { levelOf } from '#lib/syllabus/level.ts';

const SYLLABUS = [
  'Hydrostatic balance',
  'State the hydrostatic balance and the sign convention used for z.',
  'Temperature, salinity and density of sea water',
];

describe('the level of a passage', () => {
  it('is the words that neither the syllabus nor the notes have, the most frequent first', () => {
    const passage =
      'Hydrostatic balance holds where the baroclinic torque is weak. A baroclinic sea has steep isopycnals.';
    const { strange, part } = levelOf(passage, SYLLABUS);
    expect(strange.map(({ word, count }) => [word, count])).toEqual([
      ['baroclinic', 2],
      ['torque', 1],
      ['isopycnals', 1],
    ]);
    expect(part).toBeGreaterThan(0.3);
    expect(part).toBeLessThan(0.6);
  });

  it('counts a word as known in any form, and once the student has written it', () => {
    const passage = 'Isopycnals are lines of equal densities.';
    expect(levelOf(passage, SYLLABUS).strange.map(({ word }) => word)).toEqual(['Isopycnals']);
    expect(levelOf(passage, [...SYLLABUS, 'An isopycnal is a line of one density.']).strange).toEqual([]);
  });

  it('passes over everyday words, and a passage of nothing else is at the level', () => {
    expect(levelOf('The bath is full of warm water, and the picture on the wall is wet.', [])).toEqual({
      strange: [],
      part: 0,
    });
    expect(levelOf('', SYLLABUS)).toEqual({ strange: [], part: 0 });
  });
});
