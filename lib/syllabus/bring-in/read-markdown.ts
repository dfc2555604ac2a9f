import type { List, ListItem, Nodes, RootContent } from 'mdast';
import { fromMarkdown } from 'mdast-util-from-markdown';
import { checkIsText } from '../outline/plain-lines.ts';
import { readLabel } from '../outline/label.ts';
import { readHeading, readLine } from '../outline/read-line.ts';
import type { Mark, ReadLine } from '../outline/read-line.ts';
import { readLines } from '../outline/read-lines.ts';
import type { OutlineReading, OutlineRemark } from '../outline-row.ts';

/**
 * Reads a syllabus in Markdown (CommonMark): headings and lists nest; emphasis, links and the like count by their
 * words. Lists may be set in by less than CommonMark asks, as students type them: they nest by their columns.
 * Throws a StudentError: errorSyllabusTooLarge, errorSyllabusNotText, errorSyllabusEmpty.
 */
export function readMarkdown(text: string): OutlineReading {
  checkIsText(text);
  const lines: ReadLine[] = [];
  const remarks: OutlineRemark[] = [];
  for (const block of fromMarkdown(withoutFrontMatter(text)).children) readBlock(block, lines, remarks);
  // Markdown has joined what was wrapped: nothing is joined further.
  const reading = readLines(lines.map((line) => ({ ...line, afterBlank: true })));
  return { ...reading, remarks: [...reading.remarks, ...remarks].sort((a, b) => a.line - b.line) };
}

/** Facts about the document between "---" lines at its top, as many editors write them; the lines keep their numbers. */
const withoutFrontMatter = (text: string): string =>
  text.replace(/^\ufeff?---\r?\n[\s\S]*?\n---(?=\r?\n|$)/, (front) => front.replace(/[^\n]/g, ''));

function readBlock(block: RootContent, lines: ReadLine[], remarks: OutlineRemark[]): void {
  if (block.type === 'heading') lines.push(headingOf(block.depth, wordsOf(block), placeOf(block).line));
  else if (block.type === 'paragraph') lines.push(...linesOf(block));
  else if (block.type === 'list') readList(block, lines, remarks);
  else if (block.type === 'blockquote')
    for (const inside of block.children) readBlock(inside, lines, remarks);
  else if (block.type !== 'thematicBreak' && block.type !== 'definition')
    remarks.push({ line: placeOf(block).line, about: 'not-outline', text: wordsOf(block).slice(0, 200) });
}

function headingOf(level: number, text: string, line: number): ReadLine {
  const { mark, text: words } = readHeading(level, text);
  return lineOf(line, 0, mark, words, text);
}

/** The lines of a paragraph each say something: "1.1 Swell" and "1.2 Surf" below it are two topics. */
function linesOf(block: RootContent): ReadLine[] {
  const { line, indent } = placeOf(block);
  return wordsOf(block, '\n')
    .split('\n')
    .flatMap((text, i) => {
      const read = readLine({ line: line + i, text: ' '.repeat(indent) + text.trim(), afterBlank: true });
      return read ?? [];
    });
}

function readList(list: List, lines: ReadLine[], remarks: OutlineRemark[]): void {
  list.children.forEach((item, i) => readItem(item, numberOf(list, i), lines, remarks));
}

/** "2." for the second of a numbered list; the sign of its marker counts for nothing else. */
const numberOf = (list: List, i: number): string | null =>
  list.ordered ? `${(list.start ?? 1) + i}.` : null;

function readItem(item: ListItem, number: string | null, lines: ReadLine[], remarks: OutlineRemark[]): void {
  const { line, indent } = placeOf(item);
  const [first, ...rest] = item.children;
  const isText = first?.type === 'paragraph' || first?.type === 'heading';
  const text = isText ? wordsOf(first) : '';
  const own = readLabel(text);
  const labelled = own?.label.sure ? own : number === null ? null : readLabel(`${number} ${text || 'X'}`);
  const mark: Mark = labelled ? { kind: 'label', label: labelled.label } : { kind: 'bullet', sign: '-' };
  if (text) lines.push(lineOf(line, indent, mark, labelled ? labelled.rest : text, text));
  for (const block of isText ? rest : item.children) {
    if (block.type === 'list') readList(block, lines, remarks);
    else readBlock(block, lines, remarks);
  }
}

const lineOf = (line: number, indent: number, mark: Mark, text: string, unmarked: string): ReadLine => ({
  line,
  afterBlank: true,
  indent,
  mark,
  text: text.replace(/\s+/g, ' ').trim(),
  width: indent + unmarked.length,
  unmarked,
});

const placeOf = ({ position }: Nodes): { line: number; indent: number } => ({
  line: position?.start.line ?? 1,
  indent: (position?.start.column ?? 1) - 1,
});

/** The words of a node, without its marks; a line end stands for itself or for a space. */
function wordsOf(node: Nodes, lineEnd = ' '): string {
  if (node.type === 'break') return lineEnd;
  if (node.type === 'html') return '';
  if ('value' in node) return node.value.replaceAll('\n', lineEnd);
  if (node.type === 'image') return node.alt ?? '';
  return 'children' in node ? node.children.map((child) => wordsOf(child, lineEnd)).join('') : '';
}
