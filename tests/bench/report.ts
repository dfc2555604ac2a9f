import { execFileSync } from 'node:child_process';
import { availableParallelism, cpus, loadavg, totalmem } from 'node:os';
import { findChromium } from '../tools/find-browsers.mjs';
import { type Figure, brief } from './figure.ts';

const HEAD = ['figure', 'value', 'against', 'ratio', 'goal', 'met'];

function cellsOf({ name, value, unit, against, ratio, goal, met }: Figure): string[] {
  const verdict = met === null ? '' : met ? 'yes' : 'NO';
  return [
    name,
    `${brief(value)} ${unit}`,
    against ?? '',
    ratio === null ? '' : brief(ratio),
    goal ?? '',
    verdict,
  ];
}

/** The figures in columns, for a terminal; also a Markdown table. */
export function table(figures: readonly Figure[]): string {
  const rows = [HEAD, ...figures.map(cellsOf)];
  const widths = HEAD.map((_, column) => Math.max(...rows.map((row) => row[column]!.length)));
  const line = (cells: string[]) => `| ${cells.map((cell, i) => cell.padEnd(widths[i]!)).join(' | ')} |`;
  const rule = `| ${widths.map((width) => '-'.repeat(width)).join(' | ')} |`;
  const [head, ...body] = rows.map(line);
  return [head, rule, ...body].join('\n');
}

/** How busy the machine was before the bench added to it. */
const loadBefore = loadavg()[0]!;

/** What it was measured on: no names, no paths. */
export function machineInWords(): string {
  const memory = Math.round(totalmem() / 2 ** 30);
  const load = `${loadBefore.toFixed(1)} before and ${loadavg()[0]!.toFixed(1)} after`;
  return (
    `${availableParallelism()} cores (${cpus()[0]?.model.trim() ?? 'unknown'}), ${memory} GiB of memory, ` +
    `Node ${process.versions.node}, ${browserVersion()}, load ${load}`
  );
}

function browserVersion(): string {
  const path = findChromium();
  if (!path) return 'no Chromium';
  const said = execFileSync(path, ['--version'], { encoding: 'utf8', stdio: ['ignore', 'pipe', 'ignore'] });
  return /^\S+ [\d.]+/.exec(said)?.[0] ?? said.trim();
}

const HOW = `## How

- Each figure is a median. What it is held against was measured in the same run, in turns with it, so that whatever disturbs the machine falls on both. A load before the run of more than a few tenths means that other work disturbed it: the milliseconds are then too high, most of all in the browser.
- \`ui/\`, \`store/\` and \`recall/\` run in headless Chromium on a deck written there row by row: one course of 20 topics, 5,000 questions and, where the name says so, 50,000 attempts (20,000 questions and 200,000 attempts in the figures with 20000).
- \`ui/popup-first-question\`: from the start of navigation to popup.html, in a tab, until the first question is painted. The desk has been open once before, so that the popup finds what comes next, and the database has been closed for two seconds. \`ui/popup-round-ready\`: until a round can be started. \`ui/popup-gaps\`: until the gaps are shown, with which the whole course has been read and ranked. \`ui/popup-blocked\`: the longest task on the popup's main thread from its first paint until half a second after the gaps are shown, in processor time. The empty page holds one word.
- \`store/\`: a course read and checked, against a bare \`getAll\` of the same stores. \`recall/\`: memory of every item from the attempts, and the order of all items, against a bare read of the attempts, which comes before either.
- \`recall/marks-…\`: share of the marks to be expected on exam day by 200 simulated students of each law, with what Plumbline asks and with the best of four fixed orders; the goal is a tenth of the marks still missing there; laws, orders and the full table are in docs/method.md. \`recall/next-item\`, \`recall/unpack\`: in Node, 20,000 questions and 200,000 attempts.
- \`syllabus/\` otherwise runs in Node on made-up words: 500 topics with three statements each, 5,000 clips of 120 words, passages of 150 words; for coverage 5,000 clips and 20,000 questions and lines, with 100,000 attempts behind them. \`syllabus/specification-\`: PDFs made of outlines of 200 lines, in nine styles with eight outlines each; the style that comes back worst.
- \`syllabus/match-foldoc-\` and \`-webster-\` are measured on the test parts of two labelled dictionaries (\`tests/data/match/README.md\`), the last number being how many texts of each topic are tagged (the mean of five draws); all methods get the same texts, the baselines in the form that serves them best. \`top3\`: texts with one of their topics among the first three. \`calibration\`: expected calibration error of the first suggestion, in ten bins. \`outside-found\`: texts of the other dictionary, subjects that both have left out, that are said to look outside the syllabus; \`outside-wrongly\`: texts of the syllabus of which the same is said.
- \`capture/find-…\`: one passage in each paragraph of 80 to 1,500 characters in seven chapters of the mpmath manual (Debian's python-mpmath-doc), more than 400 of them, described in the page as it is and sought in an edited copy: one word in twenty replaced (\`words\`, the mildest), paragraphs put in and taken out around it, elements wrapped, renamed and taken out with white space and ids changed (\`markup\`), one character in ten altered, \`all\` of these; formulas typeset by KaTeX on one side only; and the passages taken out (\`gone\`, where no place is right). Right: at least nine tenths of what is found and of the passage are the same. Wrong: nothing of it is. The library gets the same passages, as its manual has it used, with the old position as a hint. \`find-100-on-1mb\`: a hundred passages after \`words\` on eight chapters in one page, in a page just opened; what the search took of the main thread in all, and its longest piece in any round.
- \`notes/search-…\`: in headless Chromium, one course of 5,000 clips (120 words, with 25 of the student's own), 7,000 note lines and 8,000 questions of made-up words. Forty texts of one to four words that stand together in a clip, three in four with a letter lost, typed letter by letter: each key stroke is the middle of three turns and stands for the search and the excerpts that are shown, not for drawing them. MiniSearch: all words, the last by its beginning, misspellings up to a fifth of a word's letters, without excerpts. The scan: every text in small letters, asked whether it holds each word as it is. \`typed\`: the same typed on the desk's search page, and what each key takes of its main thread until the next one, drawing included, in processor time. \`ready\`: from opening the search until everything is in its index, reading included; \`longest-block\`: the longest that a timer of the page had to wait meanwhile. \`follow\`: from a line being changed until the open search finds it.
- \`capture/clip-script-kb\`: the script that is put into a page, minified; 1 kB is 1000 bytes.
`;

/** docs/benchmarks.md. */
export function docsPage(figures: readonly Figure[]): string {
  const date = new Date().toISOString().slice(0, 10);
  return `# Benchmarks

Measured on ${date} with \`npm run bench -- --docs\`, which writes this page.

Machine: ${machineInWords()}.

${table(figures)}

${HOW}`;
}
