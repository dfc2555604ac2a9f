import type { Passage } from '#lib/model/clip.ts';
import { MATHML_ELEMENTS } from '../allow-list.ts';
import { LONGEST_PASSAGE_HTML } from '../limits.ts';
import { styledText } from './letters.ts';
import { type MathNode, mathNode, parseMath, writeMath } from './math-tree.ts';
import { mathmlToTex } from './mathml-to-tex.ts';
import { texToMathml } from './tex-to-mathml.ts';

/** As the capture writes formulas: whole, and none in another. */
const FORMULA = /<math\b[^>]*>[\s\S]*?<\/math>/g;

/**
 * The passage with MathML for formulas of which the page gave only TeX, and TeX for those of which it gave only
 * MathML. What cannot be completed stays as it is, and so does the plain text. Needs no document, so that it runs in
 * the background, where the libraries' size does not matter. The markup is as clean as before, and is cleaned again
 * whenever it is shown.
 */
export function completeMaths(passage: Passage): Passage {
  const html = passage.html.replace(FORMULA, completeFormula);
  return html.length > LONGEST_PASSAGE_HTML ? passage : { ...passage, html };
}

function completeFormula(markup: string): string {
  const math = parseMath(markup);
  if (!math) return markup;
  const [first] = math.children;
  const content = first?.name === 'semantics' ? first.children.slice(0, 1) : math.children;
  const note = first?.children.find(({ name }) => name === 'annotation');
  const words = content.length === 1 && content[0]?.name === 'mtext' ? content[0].text.trim() : null;
  if (note) return words === note.text.trim() ? (fromTex(words, math) ?? markup) : markup;
  // Words in place of a formula, such as its spoken form, are no TeX.
  const tex = words === null ? mathmlToTex(markup) : null;
  return tex === null ? markup : writeMath({ ...math, children: [annotated(content, tex)] });
}

function fromTex(tex: string, { attributes }: MathNode): string | null {
  const made = texToMathml({ tex, display: attributes['display'] === 'block' });
  const math = 'mathml' in made ? parseMath(made.mathml) : null;
  return math && writeMath(withinCore(math));
}

function annotated(content: MathNode[], tex: string): MathNode {
  const [only] = content;
  const whole = withinCore(only && content.length === 1 ? only : mathNode('mrow', {}, content));
  const note = mathNode('annotation', { encoding: 'application/x-tex' }, [], tex);
  return mathNode('semantics', {}, [whole, note]);
}

/** Within MathML Core: a row for an element that it does not have, and letters of an alphabet for their name in full. */
function withinCore(node: MathNode): MathNode {
  if (!MATHML_ELEMENTS.has(node.name)) return mathNode('mrow', {}, node.children.map(withinCore));
  const { mathvariant, ...attributes } = node.attributes;
  const text = mathvariant ? styledText(node.text, mathvariant) : node.text;
  if (text === node.text) return { ...node, children: node.children.map(withinCore) };
  return mathNode(node.name, attributes, [], text);
}
