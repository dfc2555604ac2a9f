import { useEffect, useState } from 'preact/hooks';
import { browser } from 'wxt/browser';
import { pdfPageLink, pdfTabLink } from '../pdf/pdf-link.ts';
import { isPdfTab, looksLikePdf } from '../pdf/tab-bytes.ts';
import { t } from '../text.ts';

interface Tab {
  id: number;
  isLikely: boolean;
}

/** Opens the PDF under the popup in the reader, or the reader to pick one. */
export function PdfButton({ fail }: { fail(error: unknown): void }) {
  const [tab, setTab] = useState<Tab | null>(null);
  useEffect(() => {
    void browser.tabs.query({ active: true, currentWindow: true }).then(([active]) => {
      if (active?.id !== undefined) setTab({ id: active.id, isLikely: looksLikePdf(active.url ?? '') });
    });
  }, []);
  const open = async () => {
    try {
      // An address need not say what it leads to: the tab is asked, now that the student clicked.
      const isPdf = tab !== null && (tab.isLikely || (await isPdfTab(tab.id)));
      await browser.tabs.create({ url: isPdf ? pdfTabLink(tab.id) : pdfPageLink() });
      window.close();
    } catch (error) {
      fail(error);
    }
  };
  return (
    <div>
      <button class={tab?.isLikely ? 'main' : 'plain'} onClick={() => void open()}>
        {tab?.isLikely ? t('popupPdfTab') : t('popupPdf')}
      </button>
    </div>
  );
}
