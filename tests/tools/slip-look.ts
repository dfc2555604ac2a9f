import type { TabDriver } from './driver.ts';

/** What a student sees on the slip. */
export interface SlipLook {
  text: string;
  topics: { name: string; checked: boolean }[];
  /** The id, or the tag, of what has the focus. */
  focus: string;
  /** Formulas in the passage, as it will be kept. */
  formulas: number;
  passage: string;
}

/** Looks at the slip in a tab; null while none is open or it is still empty. */
export function lookAtSlip(tab: TabDriver): Promise<SlipLook | null> {
  return tab.inSlip((root) => {
    const sheet = root?.querySelector<HTMLElement>('.sheet');
    if (!root || !sheet || sheet.childElementCount === 0) return null;
    const words = (element: Element) => element.textContent.replace(/\s+/g, ' ').trim();
    return {
      text: sheet.innerText.trim(),
      topics: [...sheet.querySelectorAll<HTMLInputElement>('.topics input[type=checkbox]')].map((box) => ({
        name: words(box.closest('label')!),
        checked: box.checked,
      })),
      focus: root.activeElement?.id || root.activeElement?.localName || '',
      formulas: sheet.querySelectorAll('.preview math').length,
      passage: sheet.querySelector('.preview')?.textContent ?? '',
    };
  });
}
