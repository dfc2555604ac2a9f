import { render } from 'preact';
import { send } from '../send.ts';
import { raiseHost } from '../slip/host.ts';
import { Notice } from '../slip/notice.tsx';
import { t } from '../text.ts';

/** Tells the student that a passage is not on its page any more, and where the copy is. Gives a way to take it back. */
export function sayGone(doc: Document, clipId: string): () => void {
  const host = raiseHost(doc);
  const open = () => {
    void send('openDesk', { path: `clip/${clipId}` });
    host.leave();
  };
  render(
    <Notice
      text={t('passageGone')}
      action={{ label: t('passageGoneOpen'), run: open }}
      leave={() => host.leave()}
    />,
    host.sheet,
  );
  host.place();
  return () => {
    if (host.sheet.isConnected) host.leave();
  };
}
