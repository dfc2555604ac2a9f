import type { Nodes, RootContent } from 'mdast';
import { fromDom } from 'hast-util-from-dom';
import { type Handle, toMdast } from 'hast-util-to-mdast';
import { MATHML } from '#lib/capture/dom.ts';
import { texOf } from '#lib/capture/maths/convert-maths.ts';
import { linearMaths } from '#lib/capture/maths/linear-maths.ts';
import { cleanPassage } from '#lib/capture/sanitise.ts';
import { formulaNode } from './dialect.ts';

/** Stands for a formula while a passage is turned into Markdown. */
const FORMULA = 'x-formula';

/** Elements that Markdown lacks and takes as they are. */
const AS_THEY_ARE = ['sub', 'sup', 'u', 'mark', 'kbd'] as const;

/**
 * A kept passage as blocks of Markdown: formulas by their TeX (in a linear form where none is known), powers and the
 * like by their tags, which Markdown lets through.
 *
 * @param pictureOf what stands for the picture with this number
 * @param doc any document of the window that the work is done in
 */
export function passageBlocks(
  html: string,
  pictureOf: (number: number) => RootContent | null,
  doc: Document,
): RootContent[] {
  const fragment = cleanPassage(html, doc);
  for (const element of fragment.querySelectorAll('math'))
    if (element.namespaceURI === MATHML) element.replaceWith(placeOfFormula(element));
  const asItIs = (name: string): Handle => {
    return (state, element) => [
      { type: 'html', value: `<${name}>` },
      ...(state.all(element) as Nodes[]),
      { type: 'html', value: `</${name}>` },
    ];
  };
  const tree = toMdast(fromDom(fragment) as Parameters<typeof toMdast>[0], {
    document: true,
    handlers: {
      ...Object.fromEntries(AS_THEY_ARE.map((name) => [name, asItIs(name)])),
      [FORMULA]: (_state, { properties, children }) => {
        const [text] = children;
        const tex = text?.type === 'text' ? text.value : '';
        return formulaNode(tex, 'dataApart' in properties);
      },
      img: (_state, { properties }) => pictureOf(Number(properties['dataPicture'])) ?? undefined,
    },
  });
  return tree.type === 'root' ? tree.children : [];
}

function placeOfFormula(math: Element): Node {
  const doc = math.ownerDocument;
  const tex = texOf(math);
  if (tex === null) return doc.createTextNode(linearMaths(math));
  const place = doc.createElement(FORMULA);
  place.textContent = tex;
  if (math.getAttribute('display') === 'block') place.setAttribute('data-apart', '');
  return place;
}
