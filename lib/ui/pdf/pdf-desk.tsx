import { useEffect } from 'preact/hooks';
import { useDeck } from '../deck/deck-context.tsx';
import { t } from '../text.ts';
import { Choose } from './choose.tsx';
import { Password } from './password.tsx';
import { Reader } from './reader.tsx';
import { useDrop } from './use-drop.ts';
import { usePdf } from './use-pdf.ts';

/** The page on which a PDF is read and clips are kept from it. */
export function PdfDesk() {
  const { phase, pick, choose } = usePdf(useDeck());
  const isOver = useDrop(pick);
  const title = phase.is === 'open' ? phase.pdf.source.title : t('pdfOpen');
  useEffect(() => {
    document.title = `${title} · ${t('extName')}`;
  }, [title]);
  return (
    <div class={isOver ? 'drop-over' : undefined}>
      {phase.is === 'choosing' && <Choose trouble={phase.trouble} hint={phase.hint} pick={pick} />}
      {phase.is === 'opening' && <Opening name={phase.name} share={phase.share} />}
      {phase.is === 'locked' && (
        <Password
          key={String(phase.isAgain)}
          name={phase.name}
          isAgain={phase.isAgain}
          answer={phase.answer}
          leave={choose}
        />
      )}
      {phase.is === 'open' && (
        <Reader key={phase.pdf.doc.fingerprints[0]} pdf={phase.pdf} place={phase.place} another={choose} />
      )}
    </div>
  );
}

function Opening({ name, share }: { name: string; share: number | null }) {
  return (
    <main class="pdf-start stack">
      <h1>{t('pdfOpening')}</h1>
      <p role="status" class="wrap">
        {name}
      </p>
      {share !== null && <progress value={share} aria-label={t('pdfTaking')} />}
    </main>
  );
}
