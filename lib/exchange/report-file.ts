import { escaped } from './escaped.ts';
import { ProgressReport } from './progress-report.ts';
import type { ReportSheet } from './report-sheet.ts';

/** The element of the file that holds the report for programs. */
const BLOCK = 'progress-report';

/** Plain enough for any browser, and for paper. The file loads nothing. */
const STYLE = `:root { color-scheme: light dark; }
body { max-width: 60rem; margin: 2rem auto; padding: 0 1rem; font: 16px/1.45 system-ui, sans-serif; }
table { width: 100%; border-collapse: collapse; }
th, td { padding: 0.3rem 0.5rem; border-bottom: 1px solid #8888; text-align: start; vertical-align: top; }
td { overflow-wrap: anywhere; }
tr { break-inside: avoid; }`;

/**
 * A report as one HTML file: a page that any browser shows, with the report as JSON in it (`ProgressReport` in
 * progress-report.ts), so that a program reads the same numbers.
 *
 * @param language BCP 47 tag of the words
 */
export function reportFile(report: ProgressReport, sheet: ReportSheet, language: string): string {
  const cell = (text: string): string => `<td>${escaped(text)}</td>`;
  const row = ({ topic, cells }: ReportSheet['rows'][number]): string =>
    `<tr><th scope="row">${escaped(topic)}</th>${cells.map(cell).join('')}</tr>`;
  return `<!doctype html>
<html lang="${escaped(language)}">
<head>
<meta charset="utf-8">
<meta name="viewport" content="width=device-width">
<meta http-equiv="Content-Security-Policy" content="default-src 'none'; style-src 'unsafe-inline'">
<title>${escaped(sheet.title)}</title>
<style>${STYLE}</style>
</head>
<body>
<h1>${escaped(sheet.title)}</h1>
${sheet.lines.map((line) => `<p>${escaped(line)}</p>`).join('\n')}
<h2>${escaped(sheet.securedTitle)}</h2>
<ul>
${sheet.secured.map((name) => `<li>${escaped(name)}</li>`).join('\n')}
</ul>
<table>
<thead><tr>${sheet.columns.map((name) => `<th scope="col">${escaped(name)}</th>`).join('')}</tr></thead>
<tbody>
${sheet.rows.map(row).join('\n')}
</tbody>
</table>
<script type="application/json" id="${BLOCK}">${dataOf(report)}</script>
</body>
</html>
`;
}

/** Reads the report out of such a file; null where there is none, or one that does not fit. */
export function reportIn(html: string): ProgressReport | null {
  const block = new RegExp(`<script type="application/json" id="${BLOCK}">([^<]*)</script>`).exec(html);
  if (!block) return null;
  try {
    return ProgressReport.safeParse(JSON.parse(block[1]!)).data ?? null;
  } catch {
    return null;
  }
}

/** JSON in which nothing can end the element that holds it. */
const dataOf = (report: ProgressReport): string => JSON.stringify(report).replaceAll('<', '\\u003c');
