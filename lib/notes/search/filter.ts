import type { SearchDocument } from './document.ts';

/** What is looked among. Null, and false, leave out nothing. */
export interface Filter {
  /** A topic with all below it. */
  topicIds: ReadonlySet<string> | null;
  sourceId: string | null;
  isUnclear: boolean;
  /** Kept since then and before then: epoch milliseconds. */
  since: number | null;
  before: number | null;
}

export const NO_FILTER: Filter = {
  topicIds: null,
  sourceId: null,
  isUnclear: false,
  since: null,
  before: null,
};

/** Whether a filter leaves out anything. */
export const leavesOut = ({ topicIds, sourceId, isUnclear, since, before }: Filter): boolean =>
  isUnclear || topicIds !== null || sourceId !== null || since !== null || before !== null;

/** Whether a document is looked at. `clip` is the one that it was written from, where there is one. */
export function passes(document: SearchDocument, filter: Filter, clip: SearchDocument | undefined): boolean {
  const { topicIds, sourceId, isUnclear, since, before } = filter;
  return (
    (topicIds === null || document.topicIds.some((id) => topicIds.has(id))) &&
    (sourceId === null || (clip ?? document).sourceId === sourceId) &&
    (!isUnclear || document.unclear || clip?.unclear === true) &&
    (since === null || document.createdAt >= since) &&
    (before === null || document.createdAt < before)
  );
}
