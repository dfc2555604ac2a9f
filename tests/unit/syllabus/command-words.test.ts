import { describe, expect, it } from 'vitest';
import { isCommandWord, isPlainCommand, withoutCommand } from '#lib/syllabus/command-words.ts';

describe('command words', () => {
  it('are known in any case', () => {
    expect(['Define', 'STATE', 'sketch', 'waves'].map(isCommandWord)).toEqual([true, true, true, false]);
  });

  it('that name no subject are known by their endings, too', () => {
    expect(['describe', 'describes', 'described', 'explained'].every(isPlainCommand)).toBe(true);
    expect(['derivative', 'writing', 'state', 'discus', 'need'].some(isPlainCommand)).toBe(false);
  });

  it.each([
    ['State the dispersion relation', ' the dispersion relation'],
    ['Candidates should be able to sketch isobars', ' isobars'],
    ['can state it', ' it'],
    ['Waves break', 'Waves break'],
  ])('are taken off "%s"', (statement, rest) => {
    expect(withoutCommand(statement)).toBe(rest);
  });
});
