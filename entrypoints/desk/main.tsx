import { render } from 'preact';
import '#lib/ui/tokens.css';
import '#lib/ui/base.css';
import '#lib/ui/page.css';
import '#lib/ui/round/round.css';
import '#lib/ui/search/search.css';
import '#lib/ui/desk/desk.css';
import '#lib/ui/desk/coverage/coverage.css';
import '#lib/ui/desk/notes/notes.css';
import '#lib/ui/print/print.css';
import { DeckProvider } from '#lib/ui/deck/deck-context.tsx';
import { Desk } from '#lib/ui/desk/desk.tsx';

render(
  <DeckProvider>
    <Desk />
  </DeckProvider>,
  document.getElementById('app')!,
);
