import type { SearchDocument, SearchKind } from '#lib/notes/search/document.ts';
import type { PluralName, TextName } from '../text.ts';

interface KindShown {
  name: TextName;
  counted: PluralName;
  /** Where it is opened, as a path of the desk. */
  pathOf(document: SearchDocument): string;
}

/** What is written is opened at its topic, which shows all of it. */
const atTopic = ({ id, topicIds }: SearchDocument): string => `topic/${topicIds[0]}/${id}`;

/** How each kind of result is named and opened. */
export const KINDS: Record<SearchKind, KindShown> = {
  clip: { name: 'clip', counted: 'searchClips', pathOf: ({ id }) => `clip/${id}` },
  line: { name: 'searchKindLine', counted: 'searchLines', pathOf: atTopic },
  question: { name: 'searchKindQuestion', counted: 'searchQuestions', pathOf: atTopic },
};
