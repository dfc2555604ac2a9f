import createDOMPurify, { type DOMPurify } from 'dompurify';
import { ATTRIBUTE_NAMES, HTML_ELEMENTS, MATHML_ELEMENTS } from './allow-list.ts';
import { allowOnly } from './allow-only.ts';

export { serialise } from './allow-only.ts';

/**
 * A passage that is safe to show: nothing but the allow-list (./allow-only.ts), and DOMPurify's judgement on top, on
 * nodes that have no view. For every showing of stored markup and for all that comes from outside, such as an imported
 * file. Cleaning what is clean changes nothing.
 *
 * @param source markup, or nodes, which are copied
 * @param doc any document of the window that the work is done in
 */
export function cleanPassage(source: DocumentFragment | string, doc: Document): DocumentFragment {
  const purifier = purifierOf(doc);
  return allowOnly(source, doc, (root) => {
    purifier.sanitize(root, {
      IN_PLACE: true,
      ALLOWED_TAGS: [...HTML_ELEMENTS, ...MATHML_ELEMENTS],
      ALLOWED_ATTR: [...ATTRIBUTE_NAMES],
      ALLOW_DATA_ATTR: false,
      ALLOW_ARIA_ATTR: false,
      // Nodes need no policy, and asking for one may be refused.
      TRUSTED_TYPES_POLICY: null,
    });
  });
}

const purifiers = new WeakMap<object, DOMPurify>();

function purifierOf(doc: Document): DOMPurify {
  const view = doc.defaultView;
  // A document without a view belongs to the window that this module runs in.
  const purifier = view ? (purifiers.get(view) ?? createDOMPurify(view)) : createDOMPurify;
  if (view) purifiers.set(view, purifier);
  if (!purifier.isSupported) throw new Error('cleaning needs a window');
  return purifier;
}
