import { dayInWords } from '#lib/exchange/reference.ts';
import type { ReportWords } from '#lib/exchange/report-sheet.ts';
import { dayOf } from '../../derive/days.ts';
import { percent, t } from '../../text.ts';

const GAPS = {
  'no-clip': 'lackClip',
  'lesson-missing': 'lackLesson',
  'not-understood': 'lackWords',
  unclear: 'lackClear',
  'one-source': 'lackSource',
  'statement-unticked': 'lackTicks',
  'statement-unexplained': 'lackExplained',
  'no-question': 'lackQuestion',
  'no-line': 'lackLine',
  'statement-unasked': 'lackAsked',
  'not-recalled': 'lackRecalled',
  'not-secured': 'lackSecured',
} as const satisfies Record<Parameters<ReportWords['gap']>[0], string>;

/** The words of a progress report, in the language of the desk. */
export const reportWords = (): ReportWords => ({
  title: (course) => t('reportTitle', course),
  student: (name) => t('reportStudent', name),
  madeOn: (at) => t('reportMade', dayInWords(dayOf(at))),
  exam: (day) => (day === null ? `${t('examUnknown')}.` : t('reportExam', dayInWords(day))),
  overall: ({ part, low, high }) => t('securedOverall', percent(part), percent(low), percent(high)),
  questions: (written, target) => t('questionsOf', written, target),
  securedTopics: (count, of) => t('reportSecured', count, of),
  noneSecured: t('reportNoneSecured'),
  columns: [t('topic'), t('coverageShare'), t('coverageSecured'), t('reportMarks'), t('reportMissing')],
  share: (part) => percent(part, 1),
  percent: (part) => percent(part),
  marks: (got, outOf) => t('marksNofN', got.toLocaleString(), outOf),
  noMarks: t('reportNoMarks'),
  gap: (kind) => t(GAPS[kind]),
  noGaps: t('gapsNone'),
});
