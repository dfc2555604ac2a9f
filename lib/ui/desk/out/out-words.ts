import { dayInWords } from '#lib/exchange/reference.ts';
import type { OutWords } from '#lib/exchange/out/out-words.ts';
import { dayOf } from '../../derive/days.ts';
import { t, tn } from '../../text.ts';

const day = (at: number): string => dayInWords(dayOf(at));

/** The words of what goes out, in the language of the desk. */
export const outWords = (now: number): OutWords => ({
  about: t('outAbout', day(now)),
  studyNote: t('privateStudy'),
  question: t('outQuestion'),
  answer: t('outAnswer'),
  marks: (count) => tn('outMarks', count),
  ownWords: t('outOwnWords'),
  unclear: t('outUnclear'),
  from: t('outFrom'),
  licence: t('licence'),
  keptOn: (at) => t('keptOn', day(at)),
  ownNotes: (at) => t('ownNotesOf', day(at)),
  untagged: t('outUntagged'),
  pictureGone: t('pictureGone'),
});
