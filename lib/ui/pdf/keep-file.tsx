import { HEAVIEST_FILE } from '#lib/model/source-file.ts';
import { dropFile, fileOf, keepFile, sourceAt } from '#lib/store/actions/files.ts';
import { useDeck } from '../deck/deck-context.tsx';
import { useAction } from '../deck/use-action.ts';
import { Trouble } from '../parts/trouble.tsx';
import { t } from '../text.ts';
import { useLive } from '../use-live.ts';
import { type PdfFile, type PdfSource, sizeText } from './pdf-file.ts';

/** Whether the file itself stands in the deck: the student's choice, off at first. */
export function KeepFile({ file, source }: { file: PdfFile; source: PdfSource }) {
  const db = useDeck();
  const action = useAction();
  const kept = useLive(
    async () => {
      const known = await sourceAt(db, source.url);
      return known && (await fileOf(db, known.id)) ? known.id : null;
    },
    ['sources', 'files'],
    source.url,
  );
  if (kept.state !== 'ready') return null;
  const sourceId = kept.value;
  const isHeavy = file.bytes.size > HEAVIEST_FILE;
  return (
    <div class="stack">
      <label class="check">
        <input
          type="checkbox"
          checked={sourceId !== null}
          disabled={isHeavy || action.busy}
          onChange={() =>
            void action.run(() =>
              sourceId === null ? keepFile(db, source, file, Date.now()) : dropFile(db, sourceId),
            )
          }
        />
        <span>
          {t('pdfKeepFile', sizeText(file.bytes.size))}{' '}
          <span class="soft">{isHeavy ? t('pdfKeepHeavy', sizeText(HEAVIEST_FILE)) : t('pdfKeepHint')}</span>
        </span>
      </label>
      <Trouble text={action.trouble} />
    </div>
  );
}
