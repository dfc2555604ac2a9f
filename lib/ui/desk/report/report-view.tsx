import { useMemo, useState } from 'preact/hooks';
import { browser } from 'wxt/browser';
import { fileName } from '#lib/exchange/file-name.ts';
import { type ProgressReport, progressReport } from '#lib/exchange/progress-report.ts';
import { reportFile } from '#lib/exchange/report-file.ts';
import { type ReportSheet, reportSheet } from '#lib/exchange/report-sheet.ts';
import { securedOverall } from '#lib/syllabus/stakes.ts';
import type { Standing } from '../../derive/next-up.ts';
import { coverDeck } from '../../derive/progress.ts';
import { t } from '../../text.ts';
import { downloadText } from '../download.ts';
import { linkTo } from '../route.ts';
import { reportWords } from './report-words.ts';

/** How the student stands, to be printed or saved for a teacher: what is seen here is what is handed on. */
export function ReportView({ standing }: { standing: Standing }) {
  const [student, setStudent] = useState('');
  const [saved, setSaved] = useState('');
  const report = useMemo(() => reportOf(standing, student, Date.now()), [standing, student]);
  const words = useMemo(reportWords, []);
  const sheet = reportSheet(report, words);
  const save = () => {
    const name = fileName(report.course.name, t('reportFile'), 'html');
    downloadText(name, 'text/html', reportFile(report, sheet, browser.i18n.getUILanguage()));
    setSaved(name);
  };
  return (
    <div class="stack report">
      <div class="row apart">
        <h1>{sheet.title}</h1>
        <p class="row screen-only">
          <a href={linkTo('coverage')}>{t('pageCoverage')}</a>
          <button onClick={() => print()}>{t('print')}</button>
          <button class="main" onClick={save}>
            {t('reportSave')}
          </button>
        </p>
      </div>
      <div class="sheet stack screen-only">
        <p>{t('reportHow')}</p>
        <div class="field narrow">
          <label for="report-student">{t('reportName')}</label>
          <input
            id="report-student"
            maxLength={200}
            value={student}
            onInput={(event) => {
              setStudent(event.currentTarget.value);
              setSaved('');
            }}
          />
        </div>
        <p role="status">{saved && t('fileSaved', saved)}</p>
      </div>
      <Sheet sheet={sheet} />
    </div>
  );
}

/** The report itself, as its file shows it. */
function Sheet({ sheet }: { sheet: ReportSheet }) {
  return (
    <>
      {sheet.lines.map((line) => (
        <p key={line}>{line}</p>
      ))}
      <h2>{sheet.securedTitle}</h2>
      <ul class="plain-list">
        {sheet.secured.map((name, index) => (
          <li key={index}>{name}</li>
        ))}
      </ul>
      <table class="numbers">
        <thead>
          <tr>
            {sheet.columns.map((name) => (
              <th key={name} scope="col">
                {name}
              </th>
            ))}
          </tr>
        </thead>
        <tbody>
          {sheet.rows.map(({ topic, cells }, index) => (
            <tr key={index}>
              <th scope="row">{topic}</th>
              {cells.map((cell, column) => (
                <td key={column} data-label={sheet.columns[column + 1]}>
                  {cell}
                </td>
              ))}
            </tr>
          ))}
        </tbody>
      </table>
    </>
  );
}

function reportOf({ deck, progress }: Standing, student: string, now: number): ProgressReport {
  const coverage = coverDeck(deck, progress).topics;
  return progressReport({
    course: deck.course,
    topics: deck.topics,
    coverage,
    secured: securedOverall(coverage),
    attempts: deck.attempts,
    items: new Set(progress.items.keys()),
    questions: deck.questions.length,
    student,
    now,
  });
}
