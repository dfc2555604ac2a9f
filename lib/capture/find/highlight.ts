/** What painting needs of a window; older browsers lack some of it. */
type View = Window & typeof globalThis;

/** Colours that browser and student have chosen for marked text. */
const MARKED = 'background-color: Mark; color: MarkText';

/** The sheets that this code put into documents, by the name of their highlight. */
const sheets = new WeakMap<Document, Map<string, CSSStyleSheet>>();

/**
 * Paints ranges over the page with the CSS Custom Highlight API, in place of those painted before under this name. The
 * page's nodes are left alone. False where the browser has no such API: nothing is painted then.
 */
export function paintRanges(view: Window, name: string, ranges: Iterable<Range>, style = MARKED): boolean {
  const { CSS, Highlight, CSSStyleSheet } = view as View;
  if (!CSS?.highlights || !Highlight || !('adoptedStyleSheets' in view.document)) return false;
  const highlight = new Highlight();
  for (const range of ranges) highlight.add(range);
  const known = sheets.get(view.document) ?? new Map<string, CSSStyleSheet>();
  const sheet = known.get(name) ?? new CSSStyleSheet();
  sheet.replaceSync(`::highlight(${name}) { ${style} }`);
  sheets.set(view.document, known.set(name, sheet));
  const adopted = view.document.adoptedStyleSheets;
  if (!adopted.includes(sheet)) view.document.adoptedStyleSheets = [...adopted, sheet];
  CSS.highlights.set(name, highlight);
  return true;
}

/** Takes away what was painted under a name. */
export function clearRanges(view: Window, name: string): void {
  (view as View).CSS?.highlights?.delete(name);
  const sheet = sheets.get(view.document)?.get(name);
  if (!sheet) return;
  sheets.get(view.document)!.delete(name);
  view.document.adoptedStyleSheets = [...view.document.adoptedStyleSheets].filter((other) => other !== sheet);
}
