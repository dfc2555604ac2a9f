import type { SlipState } from '#lib/model/message.ts';

/** What the student decided on the slip. */
export interface Decision {
  topicIds: string[];
  ownWords: string;
  unclear: boolean;
}

/** What the slip proposes: what was decided before, or the likeliest topic. */
export function firstDecision({ kept, aimedTopicId, suggestions, offSyllabus }: SlipState): Decision {
  if (kept) return { topicIds: kept.topicIds, ownWords: kept.ownWords, unclear: kept.unclear };
  const likely = aimedTopicId ?? (offSyllabus ? undefined : suggestions[0]?.topicId);
  return { topicIds: likely === undefined ? [] : [likely], ownWords: '', unclear: false };
}

/**
 * The decision on a passage that has become another: what the student wrote and ticked stays, and what was decided on
 * that passage before is added.
 *
 * @param isChosen whether the student chose topics already; if not, the topics follow the passage
 */
export function followPassage(decision: Decision, state: SlipState, isChosen: boolean): Decision {
  const first = firstDecision(state);
  const topicIds = isChosen ? decision.topicIds : first.topicIds;
  if (!state.kept) return { ...decision, topicIds };
  return {
    topicIds: [...new Set([...first.topicIds, ...topicIds])],
    ownWords: decision.ownWords.includes(first.ownWords)
      ? decision.ownWords
      : `${first.ownWords}\n${decision.ownWords}`.trim(),
    unclear: decision.unclear || first.unclear,
  };
}

/** The state with each chosen topic among the suggested, so that it stays in sight when others are suggested. */
export function withChosen(state: SlipState, topicIds: readonly string[]): SlipState {
  const { suggestions } = state;
  const chosen = topicIds.map(
    (id) => suggestions.find(({ topicId }) => topicId === id) ?? { topicId: id, chance: 0, terms: [] },
  );
  return { ...state, suggestions: [...suggestions, ...chosen] };
}
