import { render } from 'preact';
import '#lib/ui/tokens.css';
import '#lib/ui/base.css';
import '#lib/ui/page.css';
import '#lib/ui/slip/slip.css';
import '#lib/ui/pdf/pdf.css';
import '#lib/ui/pdf/text-layer.css';
import { DeckProvider } from '#lib/ui/deck/deck-context.tsx';
import { PdfDesk } from '#lib/ui/pdf/pdf-desk.tsx';

render(
  <DeckProvider>
    <PdfDesk />
  </DeckProvider>,
  document.getElementById('app')!,
);
