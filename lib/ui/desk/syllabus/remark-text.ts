import type { OutlineRemark, RemarkAbout } from '#lib/syllabus/outline-row.ts';
import { type TextName, t } from '../../text.ts';

const TEXTS = {
  'level-skipped': 'remarkLevelSkipped',
  'code-twice': 'remarkCodeTwice',
  cut: 'remarkCut',
  joined: 'remarkJoined',
  'too-deep': 'remarkTooDeep',
  'no-parent': 'remarkNoParent',
  circle: 'remarkCircle',
  'two-parents': 'remarkTwoParents',
  'number-unread': 'remarkNumberUnread',
  'quote-open': 'remarkQuoteOpen',
  'left-out': 'remarkLeftOut',
  'no-text': 'remarkNoText',
  'running-head': 'remarkRunningHead',
  'page-number': 'remarkPageNumber',
  'small-print': 'remarkSmallPrint',
  contents: 'remarkContents',
  prose: 'remarkProse',
  cover: 'remarkCover',
  'picture-page': 'remarkPicturePage',
  'not-outline': 'remarkNotOutline',
  'too-many': 'remarkTooMany',
} as const satisfies Record<RemarkAbout, TextName>;

/** What is counted in what was read: lines of a text, rows of a table, items of a package. */
export type Counted = 'line' | 'row' | 'item';

const PLACES = { line: 'placeLine', row: 'placeRow', item: 'placeItem' } as const satisfies Record<
  Counted,
  TextName
>;

/** A remark in words, with its place. */
export function remarkText({ about, line, page }: OutlineRemark, counted: Counted): string {
  return t(TEXTS[about], page === undefined ? t(PLACES[counted], line) : t('placePage', page));
}
