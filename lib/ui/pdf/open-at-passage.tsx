import type { Clip } from '#lib/model/clip.ts';
import type { Source } from '#lib/model/source.ts';
import { sourcesWithFile } from '#lib/store/actions/files.ts';
import { useDeck } from '../deck/deck-context.tsx';
import { t } from '../text.ts';
import { useLive } from '../use-live.ts';
import { pdfClipLink } from './pdf-link.ts';

/** The link from a clip of a PDF back to its passage; nothing for other clips. */
export function OpenAtPassage({ clip, source }: { clip: Clip; source: Source }) {
  const db = useDeck();
  const kept = useLive(() => sourcesWithFile(db), ['files'], 'files');
  if (source.kind !== 'pdf' || kept.state !== 'ready') return null;
  return (
    <a href={pdfClipLink(clip, source, kept.value.has(source.id))} target="_blank" rel="noreferrer noopener">
      {t('pdfOpenAtPassage')}
    </a>
  );
}
