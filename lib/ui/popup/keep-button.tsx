import { browser } from 'wxt/browser';
import { StudentError } from '#lib/model/student-error.ts';
import type { Wish } from '#lib/model/wish.ts';
import { send } from '../send.ts';
import { t } from '../text.ts';

/** What may be kept from the tab under the popup: what is selected, a diagram, a moment of its video. */
export function KeepButton({ fail }: { fail(error: unknown): void }) {
  const keep = async (wish: Wish) => {
    try {
      const [tab] = await browser.tabs.query({ active: true, currentWindow: true });
      if (tab?.id === undefined) throw new StudentError('errorPageClosed');
      await send('clipTab', { tabId: tab.id, wish });
      window.close();
    } catch (error) {
      fail(error);
    }
  };
  return (
    <footer class="row">
      <button onClick={() => void keep('selection')}>{t('popupKeep')}</button>
      <button onClick={() => void keep('frame')}>{t('popupFrame')}</button>
      <button onClick={() => void keep('moment')}>{t('popupMoment')}</button>
    </footer>
  );
}
