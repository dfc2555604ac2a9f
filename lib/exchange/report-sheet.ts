import type { ProgressReport } from './progress-report.ts';

/** A progress report in words, as it is shown, printed and written into its file. */
export interface ReportSheet {
  title: string;
  /** Sentences below the title. */
  lines: string[];
  securedTitle: string;
  /** Names of the topics that are secured, or the one sentence that there is none. */
  secured: string[];
  columns: string[];
  rows: { topic: string; cells: string[] }[];
}

/** The words of a report, in the language that it is written in. */
export interface ReportWords {
  title(course: string): string;
  student(name: string): string;
  madeOn(at: number): string;
  exam(day: string | null): string;
  overall(secured: ProgressReport['secured']): string;
  questions(written: number, target: number): string;
  securedTopics(count: number, of: number): string;
  noneSecured: string;
  columns: string[];
  share(part: number): string;
  percent(part: number): string;
  marks(got: number, outOf: number): string;
  noMarks: string;
  gap(kind: ProgressReport['topics'][number]['gaps'][number]): string;
  noGaps: string;
}

type ReportTopic = ProgressReport['topics'][number];

const nameOf = ({ code, title }: ReportTopic): string => `${code} ${title}`.trim();

/** Puts a report into words. */
export function reportSheet(report: ProgressReport, words: ReportWords): ReportSheet {
  const { topics, course, student } = report;
  const secured = topics.filter(({ isSecured }) => isSecured).map(nameOf);
  return {
    title: words.title(course.name),
    lines: [
      ...(student ? [words.student(student)] : []),
      `${words.madeOn(report.madeAt)} ${words.exam(course.examDay)}`,
      words.overall(report.secured),
      words.questions(report.questions.written, report.questions.target),
    ],
    securedTitle: words.securedTopics(secured.length, topics.length),
    secured: secured.length > 0 ? secured : [words.noneSecured],
    columns: words.columns,
    rows: topics.map((topic) => ({
      topic: nameOf(topic),
      cells: [
        words.share(topic.share),
        words.percent(topic.securedPart),
        topic.marks ? words.marks(topic.marks.got, topic.marks.outOf) : words.noMarks,
        topic.gaps.length > 0 ? topic.gaps.map(words.gap).join(', ') : words.noGaps,
      ],
    })),
  };
}
