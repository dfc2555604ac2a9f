import { browser } from 'wxt/browser';
import { StudentError } from '#lib/model/student-error.ts';
import { send } from '../send.ts';
import { t } from '../text.ts';

/** Opens the slip on what is selected in the tab under the popup. */
export function KeepButton({ fail }: { fail(error: unknown): void }) {
  const keep = async () => {
    try {
      const [tab] = await browser.tabs.query({ active: true, currentWindow: true });
      if (tab?.id === undefined) throw new StudentError('errorPageClosed');
      await send('clipTab', { tabId: tab.id, wish: 'selection' });
      window.close();
    } catch (error) {
      fail(error);
    }
  };
  return (
    <footer>
      <button onClick={() => void keep()}>{t('popupKeep')}</button>
    </footer>
  );
}
