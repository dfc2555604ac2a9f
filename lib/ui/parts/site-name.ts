import { dayInWords } from '#lib/exchange/reference.ts';
import type { Source } from '#lib/model/source.ts';
import { dayOf } from '../derive/days.ts';
import { t } from '../text.ts';

/** Where a clip is from, in short: the site, or that it is from the student's own notes of a day. */
export const siteName = (source: Source | undefined): string =>
  source?.kind === 'own' ? t('ownNotesOf', dayInWords(dayOf(source.createdAt))) : (source?.site ?? '');
