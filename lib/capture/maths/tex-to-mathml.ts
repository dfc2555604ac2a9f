import temml from 'temml';
import { type MathNode, parseMath, writeMath } from './math-tree.ts';

export interface TexFormula {
  tex: string;
  display: boolean;
}

/** The reason is for the log, in English: the library's own words. The student keeps the TeX as it was written. */
export type FromTex = { mathml: string } | { error: string };

/** More than a page of formula is no formula. */
const LONGEST_TEX = 20_000;

/** Attributes that say something of the content; the rest is for one library's style sheet. */
const KEPT =
  /^(display|encoding|mathvariant|mathcolor|displaystyle|scriptlevel|form|fence|separator|stretchy|minsize|maxsize|lspace|rspace|movablelimits|accent|accentunder|linethickness|notation|columnalign|width|height|depth|voffset)$/;

/**
 * MathML of TeX with the TeX as its annotation, without a document. TeX that the library does not know is an error,
 * never a formula with a red word in it.
 */
export function texToMathml({ tex, display }: TexFormula): FromTex {
  if (tex.length > LONGEST_TEX) return { error: 'too long' };
  try {
    const markup = temml.renderToString(tex, {
      displayMode: display,
      annotate: true,
      throwOnError: true,
      trust: false,
      maxExpand: 1000,
      macros: { ...MACROS },
    });
    const math = parseMath(markup);
    return math ? { mathml: writeMath(withoutStyles(math)) } : { error: 'unreadable' };
  } catch (error) {
    return { error: error instanceof Error ? error.message : String(error) };
  }
}

/**
 * LaTeX that the library lacks, and \overset, of which it makes a power outside displays: what stands over a thing
 * would read as raised.
 */
const MACROS: Readonly<Record<string, string>> = {
  '\\overset': '\\stackrel{#1}{#2}',
  '\\mbox': '\\text{#1}',
};

/** The library's classes and styles as attributes that MathML has, where there are any. */
function withoutStyles(node: MathNode): MathNode {
  const { class: classes = '', style = '', ...rest } = node.attributes;
  const attributes = Object.fromEntries(Object.entries(rest).filter(([name]) => KEPT.test(name)));
  const side = /\btml-(left|right)\b/.exec(classes)?.[1];
  if (node.name === 'mtd' && side) attributes['columnalign'] = side;
  const colour = /\bcolor:\s*(#[\da-f]{3,6})/i.exec(style)?.[1];
  if (colour) attributes['mathcolor'] = colour;
  const boxed = /\bborder:/.test(style);
  return {
    name: boxed ? 'menclose' : node.name,
    attributes: boxed ? { notation: 'box' } : attributes,
    // An empty row is only there to be drawn over by a style sheet.
    children: node.children
      .filter(({ attributes: { class: drawn = '' } }) => !drawn.startsWith('tml-cancel'))
      .map(withoutStyles),
    text: node.text,
  };
}
