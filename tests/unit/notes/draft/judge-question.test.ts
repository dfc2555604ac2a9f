import { describe, expect, it } from 'vitest';
import { objectionsTo } from '#lib/notes/draft/judge-question.ts';

describe('what is to be said against a question', () => {
  it.each([
    ['What is meant by a seiche?', 'What is meant by the seiche?'],
    ['State the formula for the speed of long waves.', 'What is the formula for the speed of a long wave?'],
  ])('that it is nearly a copy: %s', (prompt, other) => {
    expect(objectionsTo(prompt, ['Which tide is the higher?', other])).toEqual([
      { kind: 'near-copy', of: other },
    ]);
  });

  it.each([
    ['State the formula for \\(c\\).', 'State the formula for \\(k\\).'],
    ['What is meant by a seiche?', 'What is the period of a seiche in a closed basin?'],
    ['What is the depth at 3 km?', 'What is the depth at 5 km?'],
  ])('nothing where something else is asked: %s', (prompt, other) => {
    expect(objectionsTo(prompt, [other])).toEqual([]);
  });

  it.each([
    'What comes next after the pycnocline?',
    'In which order do the layers lie?',
    'What is the third point?',
    'List the layers of the sea in order.',
  ])('that it asks for a sequence only: %s', (prompt) => {
    expect(objectionsTo(prompt, [])).toEqual([{ kind: 'sequence-only' }]);
  });

  it.each([
    'What is the order of magnitude of the depth?',
    'Which waves arrive first, long or short ones?',
    '',
  ])('nothing of “%s”', (prompt) => {
    expect(objectionsTo(prompt, [])).toEqual([]);
  });
});
