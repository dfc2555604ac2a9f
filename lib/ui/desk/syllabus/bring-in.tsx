import { useState } from 'preact/hooks';
import type { TextFormat } from '#lib/syllabus/bring-in/read-text.ts';
import { FileButton } from '../../parts/file-button.tsx';
import { t } from '../../text.ts';
import { FORMATS } from './formats.ts';

interface BringInProps {
  first: boolean;
  text: string;
  setText(text: string): void;
  read(text: string, format: TextFormat | null): void;
  open(file: File, format: TextFormat | null): void;
}

/** Where a syllabus comes in: pasted, opened from a file, or dropped on the page. */
export function BringIn({ first, text, setText, read, open }: BringInProps) {
  const [format, setFormat] = useState<TextFormat | null>(null);
  return (
    <form
      class="sheet stack"
      onSubmit={(event) => {
        event.preventDefault();
        read(text, format);
      }}
    >
      <h2>{first ? t('syllabusBring') : t('syllabusNewer')}</h2>
      <p>{first ? t('syllabusHow') : t('syllabusNewerHow')}</p>
      <p class="soft">{t('syllabusKinds')}</p>
      <div class="field">
        <label for="outline">{t('syllabusText')}</label>
        <textarea
          id="outline"
          class="outline"
          rows={12}
          spellcheck={false}
          value={text}
          onInput={(event) => setText(event.currentTarget.value)}
        />
      </div>
      <div class="field narrow">
        <label for="outline-format">{t('syllabusAs')}</label>
        <select
          id="outline-format"
          value={format ?? ''}
          onChange={(event) => setFormat((event.currentTarget.value || null) as TextFormat | null)}
        >
          <option value="">{t('formatRecognised')}</option>
          {FORMATS.map(({ format: one, name }) => (
            <option key={one} value={one}>
              {t(name)}
            </option>
          ))}
        </select>
      </div>
      <div class="row">
        <button class="main">{t('syllabusRead')}</button>
        <FileButton id="outline-file" label={t('syllabusOpen')} open={([file]) => open(file!, format)} />
        <span class="soft">{t('syllabusDrop')}</span>
      </div>
      <details class="soft">
        <summary>{t('syllabusExampleAsk')}</summary>
        <pre tabIndex={0}>{t('syllabusExample')}</pre>
        <pre tabIndex={0}>{t('syllabusExampleTable')}</pre>
      </details>
    </form>
  );
}
