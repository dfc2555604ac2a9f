import { render } from 'preact';
import '#lib/ui/tokens.css';
import '#lib/ui/base.css';
import '#lib/ui/page.css';
import '#lib/ui/round/round.css';
import '#lib/ui/search/search.css';
import '#lib/ui/popup/popup.css';
import { DeckProvider } from '#lib/ui/deck/deck-context.tsx';
import { Popup } from '#lib/ui/popup/popup.tsx';

render(
  <DeckProvider>
    <Popup />
  </DeckProvider>,
  document.getElementById('app')!,
);
