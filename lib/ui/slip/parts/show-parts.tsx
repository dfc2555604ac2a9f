import { render } from 'preact';
import { pictureSpotter } from '#lib/capture/pictures/spot.ts';
import { mainExplanation } from '#lib/capture/section/main-explanation.ts';
import {
  type Part,
  excessOf,
  headingsOfParts,
  passageOfParts,
  readParts,
  selectorsOfParts,
} from '#lib/capture/section/parts.ts';
import { sectionAround } from '#lib/capture/section/section-around.ts';
import { StudentError } from '#lib/model/student-error.ts';
import { send } from '../../send.ts';
import { t, tell } from '../../text.ts';
import { withPictures } from '../with-pictures.ts';
import style from './parts.css?inline';
import { PartsList } from './parts-list.tsx';
import type { Widener } from './widener.ts';

/** The widener. It and all that it needs come into a page only when the student asks for more than was selected. */
export const showParts: Widener = ({ doc, range, page }, scope, box, changed) => {
  let last: readonly Part[] = [];
  const { found, spot } = pictureSpotter();
  const tellOf = async (kept: readonly Part[]) => {
    last = kept;
    const passage = passageOfParts(kept);
    const headings = headingsOfParts(doc, kept);
    const content = async () => ({
      ...(await withPictures(passage, found, doc)),
      headings,
      selectors: selectorsOfParts(doc, kept),
    });
    const problem = kept.length === 0 ? t('slipPartsNone') : tooLong(excessOf(passage));
    changed({ scope, content, problem, state: null });
    if (problem !== null) return;
    // Without an answer the suggestions stay as they are; whether the deck can be reached is told on keeping.
    const state = await send('readSlip', { text: passage.text, headings, page }).catch(() => null);
    if (state && last === kept && box.contains(root)) changed({ scope, content, problem, state });
  };
  const root = doc.createElement('div');
  root.className = 'field';
  try {
    const stretch = scope === 'section' ? { range: sectionAround(range, doc) } : mainExplanation(doc);
    if (!stretch) throw new StudentError('errorNoExplanation');
    const parts = readParts(doc, stretch, spot);
    addStyle(box.getRootNode() as ShadowRoot);
    box.replaceChildren(root);
    render(<PartsList parts={parts} changed={(kept) => void tellOf(kept)} />, root);
    return null;
  } catch (error) {
    return tell(error);
  }
};

const tooLong = (excess: ReturnType<typeof excessOf>) => excess && t('slipPartsTooLong', ...excess);

const styled = new WeakSet<ShadowRoot>();

/** Not in a <style>, which the page's policy may forbid. */
function addStyle(root: ShadowRoot): void {
  if (styled.has(root)) return;
  styled.add(root);
  const sheet = new CSSStyleSheet();
  sheet.replaceSync(style);
  root.adoptedStyleSheets.push(sheet);
}
