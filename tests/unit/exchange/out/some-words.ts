import type { OutWords } from '#lib/exchange/out/out-words.ts';

/** Words to write files with in tests. */
export const WORDS: OutWords = {
  about: 'Notes, saved on 3 March 2026.',
  studyNote: 'Clips are for your own study.',
  question: 'Question',
  answer: 'Answer',
  marks: (count) => (count === 1 ? '1 mark' : `${count} marks`),
  ownWords: 'In my own words',
  unclear: 'Unclear',
  from: 'From',
  licence: 'Licence',
  keptOn: () => 'kept on 2 March 2026',
  ownNotes: () => 'Own notes, 2 March 2026',
  untagged: 'Without a topic',
  pictureGone: 'The picture is gone.',
};
