import type { Nodes, PhrasingContent } from 'mdast';
import { type Piece, splitTex } from '#lib/notes/split-tex.ts';
import { formulaIn, formulaNode, sourceOf } from './dialect.ts';

/** Keeps apart what would grow together: a formula and the formula or the digit behind it. Nothing shows it. */
export const GAP = { type: 'html', value: '<!-- -->' } as const;

/** What CommonMark has no place for: U+0000, and halves of characters, which no file can hold. */
const UNWRITABLE = /\0|[\ud800-\udbff](?![\udc00-\udfff])|(?<![\ud800-\udbff])[\udc00-\udfff]/g;

/** Something the student wrote, with TeX in it, as nodes of a paragraph. Line ends stay line ends. */
export function phrasesOf(text: string): PhrasingContent[] {
  const nodes: PhrasingContent[] = [];
  for (const piece of splitTex(text.replace(/\r\n?/g, '\n').replace(UNWRITABLE, '\ufffd'))) {
    const isBehindFormula = nodes.at(-1)?.type === 'inlineMath';
    if (piece.kind === 'maths' && piece.tex !== '') {
      if (isBehindFormula) nodes.push(GAP);
      nodes.push(formulaNode(piece.tex, piece.display));
    } else {
      const words = piece.kind === 'words' ? piece.text : joinTex([piece]);
      if (isBehindFormula && /^\d/.test(words)) nodes.push(GAP);
      words.split('\n').forEach((line, i) => {
        if (i > 0) nodes.push({ type: 'break' });
        if (line !== '') nodes.push({ type: 'text', value: line });
      });
    }
  }
  return nodes;
}

/**
 * The text of parsed nodes with their formulas as TeX between delimiters; emphasis and the like count by their words.
 *
 * @param source what was parsed
 */
export const textOf = (nodes: readonly Nodes[], source: string): string =>
  joinTex(nodes.flatMap((node) => piecesOf(node, source)));

function piecesOf(node: Nodes, source: string): Piece[] {
  const words = (text: string): Piece[] => [{ kind: 'words', text }];
  switch (node.type) {
    case 'math':
    case 'inlineMath': {
      const formula = formulaIn(node, source);
      return formula ? [{ kind: 'maths', ...formula }] : words(sourceOf(node, source));
    }
    case 'text':
      return words(node.value.replaceAll('\n', ' '));
    case 'inlineCode':
    case 'code':
      return words(node.value);
    case 'break':
      return words('\n');
    case 'image':
    case 'imageReference':
      return words(node.alt ?? '');
    default:
      return 'children' in node ? node.children.flatMap((child) => piecesOf(child, source)) : [];
  }
}

const FORMS = [
  { inLine: ['\\(', '\\)'], apart: ['\\[', '\\]'] },
  { inLine: ['$', '$'], apart: ['$$', '$$'] },
  { inLine: ['\\( ', ' \\)'], apart: ['$$ ', ' $$'] },
  // A lone dollar sign on either side of it begins no formula then.
  { inLine: ['\\(\n', '\n\\)'], apart: ['\\[\n', '\n\\]'] },
] as const;

type Form = (typeof FORMS)[number];

/** How many ways are tried to tell formulas from delimiters that stand among the words. */
const MOST_TRIES = 2000;

/** Words and formulas as one text which `splitTex` takes apart again, where there is one. */
export function joinTex(given: readonly Piece[]): string {
  const pieces = given.flatMap((piece) => (piece.kind === 'words' ? withEmpty(piece.text) : [piece]));
  const whole = pieces.map((piece) => written(piece, FORMS[0])).join('');
  if (isSame(whole, pieces)) return whole;
  return search(pieces, true) ?? search(pieces, false) ?? whole;
}

/** Words, and delimiters with nothing between them: Markdown has no empty formulas, so that they stand among the words. */
const withEmpty = (text: string): Piece[] =>
  text.split(/(\\\( \\\)|\\\[ \\\])/).map((part, i) => {
    if (i % 2 === 0) return { kind: 'words', text: part };
    return { kind: 'maths', tex: '', display: part.startsWith('\\[') };
  });

/**
 * Looks for the delimiters of each formula that fit what is around it.
 *
 * @param isStepwise whether each formula must fit as soon as the words behind it are there, which is far quicker
 */
function search(pieces: readonly Piece[], isStepwise: boolean): string | null {
  let tries = 0;
  const from = (text: string, i: number): string | null => {
    const piece = pieces[i];
    if (!piece) return isSame(text, pieces) ? text : null;
    const next = pieces[i + 1];
    const ahead = next?.kind === 'words' ? next.text : '';
    for (const form of piece.kind === 'words' ? FORMS.slice(0, 1) : FORMS) {
      if (++tries > MOST_TRIES) return null;
      const longer = text + written(piece, form);
      const isFit = !isStepwise || isSame(longer + ahead, pieces.slice(0, ahead === '' ? i + 1 : i + 2));
      const found = isFit ? from(longer, i + 1) : null;
      if (found !== null) return found;
    }
    return null;
  };
  return from('', 0);
}

function written(piece: Piece, form: Form): string {
  if (piece.kind === 'words') return piece.text;
  const [before, after] = piece.display ? form.apart : form.inLine;
  return before + (piece.tex || ' ') + after;
}

const isSame = (text: string, pieces: readonly Piece[]): boolean => told(splitTex(text)) === told(pieces);

/** What pieces say, however the words are cut. */
function told(pieces: readonly Piece[]): string {
  const parts: (string | [string, boolean])[] = [];
  for (const piece of pieces) {
    const last = parts.at(-1);
    if (piece.kind === 'maths') parts.push([piece.tex, piece.display]);
    else if (typeof last === 'string') parts[parts.length - 1] = last + piece.text;
    else if (piece.text !== '') parts.push(piece.text);
  }
  return JSON.stringify(parts);
}
