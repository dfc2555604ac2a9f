import { useLayoutEffect } from 'preact/hooks';
import { PAPERS, type PaperName } from '#lib/notes/print/paper.ts';

/** While the screen is shown, it is printed on this paper without the browser's own margins, heads and feet. */
export function usePageSize(paper: PaperName): void {
  useLayoutEffect(() => {
    const { width, height } = PAPERS[paper];
    const sheet = new CSSStyleSheet();
    sheet.replaceSync(`@page { size: ${width}mm ${height}mm; margin: 0 }`);
    document.adoptedStyleSheets = [...document.adoptedStyleSheets, sheet];
    return () => {
      document.adoptedStyleSheets = document.adoptedStyleSheets.filter((one) => one !== sheet);
    };
  }, [paper]);
}
