import { useEffect, useState } from 'preact/hooks';
import { browser } from 'wxt/browser';
import { t } from '../text.ts';

/** How to keep a passage, with the shortcut that is really set in this browser. */
export function ShortcutHint() {
  const [shortcut, setShortcut] = useState<string | null>(null);
  useEffect(() => {
    void browser.commands
      .getAll()
      .then((commands) => setShortcut(commands.find(({ name }) => name === 'clip')?.shortcut || null));
  }, []);
  return <p class="soft">{shortcut === null ? t('howToKeepByMenu') : t('howToKeep', shortcut)}</p>;
}
