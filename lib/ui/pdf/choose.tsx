import { Trouble } from '../parts/trouble.tsx';
import { deskLink } from '../parts/desk-link.ts';
import { t } from '../text.ts';

interface ChooseProps {
  trouble: string | null;
  hint: string | null;
  pick(file: File): void;
}

/** Where a PDF comes in: picked, or dropped anywhere on the page. */
export function Choose({ trouble, hint, pick }: ChooseProps) {
  return (
    <main class="pdf-start stack">
      <h1>{t('pdfOpen')}</h1>
      <Trouble text={trouble} />
      {hint !== null && (
        <p class="remark" role="status">
          {hint}
        </p>
      )}
      <div class="pdf-drop stack">
        <p>{t('pdfDropHere')}</p>
        <span class="file">
          <label for="pdf-file" class="button main-look">
            {t('pdfPick')}
          </label>
          <input
            id="pdf-file"
            class="unseen"
            type="file"
            accept="application/pdf,.pdf"
            onChange={(event) => {
              const [file] = event.currentTarget.files ?? [];
              if (file) pick(file);
            }}
          />
        </span>
      </div>
      <p class="soft">{t('pdfStays')}</p>
      <p>
        <a href={deskLink('coverage')}>{t('openDesk')}</a>
      </p>
    </main>
  );
}
