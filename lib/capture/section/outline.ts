import { HEADING } from '../headings.ts';

/** Where a page's content stops and what is around it begins. */
export const CONTAINER =
  'article, main, aside, footer, nav, dialog, [role="article"], [role="main"], [role="complementary"], [role="dialog"]';

/** Parts of a page beside its content: nobody means them with "this section" who did not select in them. */
export const BESIDE =
  'nav, aside, footer, dialog, form, [role="navigation"], [role="complementary"], [role="contentinfo"], [role="banner"]';

/** The headings of the content in `top`, in document order; those beside it count only if `point` is there as well. */
export function headingsIn(top: Element, point: Node): Element[] {
  return [...top.querySelectorAll(HEADING)].filter((heading) => {
    const beside = heading.closest(BESIDE);
    return heading.textContent.trim() !== '' && (!beside || beside.contains(point));
  });
}
