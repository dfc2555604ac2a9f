import { expect, test } from 'vitest';
import { firstDecision, followPassage, withChosen } from '#lib/ui/slip/parts/decision.ts';
import { DEEP, SHALLOW, TIDES, slipState } from '../slip-state.ts';

const none = { topicIds: [], ownWords: '', unclear: false };

test('the topics follow the passage until the student chooses', () => {
  const tides = slipState({ suggestions: [{ topicId: TIDES.id, chance: 0.5, terms: ['moon'] }] });
  const decision = { ...firstDecision(slipState()), ownWords: 'Mine.' };
  expect(followPassage(decision, tides, false)).toEqual({ ...decision, topicIds: [TIDES.id] });
  expect(followPassage(decision, tides, true)).toEqual(decision);
});

test('what was decided on that passage before is added, nothing is lost and nothing doubled', () => {
  const kept = { clipId: 'the-clip', topicIds: [SHALLOW.id], ownWords: 'Depth decides.', unclear: true };
  const state = slipState({ kept });
  expect(followPassage(none, state, false)).toEqual({
    topicIds: [SHALLOW.id],
    ownWords: 'Depth decides.',
    unclear: true,
  });
  const mine = { topicIds: [DEEP.id], ownWords: 'Mine.', unclear: false };
  const both = followPassage(mine, state, true);
  expect(both).toEqual({
    topicIds: [SHALLOW.id, DEEP.id],
    ownWords: 'Depth decides.\nMine.',
    unclear: true,
  });
  expect(followPassage(both, state, true)).toEqual(both);
});

test('a chosen topic stays listed, with its reason where it has one', () => {
  const state = slipState({ suggestions: [{ topicId: DEEP.id, chance: 0.5, terms: ['deep'] }] });
  const { suggestions } = withChosen(state, [DEEP.id, TIDES.id]);
  expect(new Map(suggestions.map(({ topicId, terms }) => [topicId, terms]))).toEqual(
    new Map([
      [DEEP.id, ['deep']],
      [TIDES.id, []],
    ]),
  );
});
