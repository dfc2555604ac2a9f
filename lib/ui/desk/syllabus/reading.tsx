import { t } from '../../text.ts';
import type { Progress } from './read-pdf.ts';

/** How far the reading of a PDF has come, and a way to end it. */
export function Reading({ progress, stop }: { progress: Progress; stop(): void }) {
  return (
    <section class="sheet stack" aria-label={t('syllabusReading')}>
      <p role="status">{t('syllabusReadingPage', progress.page, progress.of)}</p>
      <progress value={progress.page} max={progress.of} aria-label={t('syllabusReading')} />
      <div class="row">
        <button onClick={stop}>{t('syllabusStop')}</button>
        <span class="soft">{t('syllabusStopHint')}</span>
      </div>
    </section>
  );
}
