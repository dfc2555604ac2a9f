import { browser } from 'wxt/browser';
import { defineBackground } from 'wxt/utils/define-background';
import { t } from '#lib/ui/text.ts';
import { deckHandlers } from './handlers.ts';
import { answer } from './messages.ts';
import { openSlipOrSay } from './open-slip.ts';
import { keepSitesShown } from './sites.ts';

const MENU = 'clip';

export default defineBackground({
  type: 'module',
  main() {
    const handlers = deckHandlers();
    keepSitesShown(new AbortController().signal);
    browser.commands.onCommand.addListener((command, tab) => {
      if (command === 'clip') void openSlipOrSay(tab?.id);
    });
    browser.runtime.onInstalled.addListener(() => {
      // An update finds the menu of the version before.
      void browser.contextMenus
        .removeAll()
        .then(() => browser.contextMenus.create({ id: MENU, title: t('menuClip'), contexts: ['selection'] }));
    });
    browser.contextMenus.onClicked.addListener((info, tab) => {
      if (info.menuItemId === MENU) void openSlipOrSay(tab?.id);
    });
    browser.runtime.onMessage.addListener((message, sender, respond) => {
      void answer(handlers, message, sender).then(respond);
      return true;
    });
  },
});
