import { useState } from 'preact/hooks';
import { t } from '../../text.ts';

interface PasteSyllabusProps {
  first: boolean;
  read(text: string): void;
  fail(error: unknown): void;
}

/** Where a syllabus comes in: pasted, or opened from a text file. */
export function PasteSyllabus({ first, read, fail }: PasteSyllabusProps) {
  const [text, setText] = useState('');
  return (
    <form
      class="sheet stack"
      onSubmit={(event) => {
        event.preventDefault();
        read(text);
      }}
    >
      <h2>{first ? t('syllabusBring') : t('syllabusNewer')}</h2>
      <p>{first ? t('syllabusHow') : t('syllabusNewerHow')}</p>
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
      <div class="row">
        <button class="main">{t('syllabusRead')}</button>
        <span class="field file">
          <label for="outline-file" class="button">
            {t('syllabusOpen')}
          </label>
          <input
            id="outline-file"
            class="unseen"
            type="file"
            onChange={(event) => {
              const field = event.currentTarget;
              const file = field.files?.[0];
              // The same file may be opened again after it was put right.
              if (file)
                void file
                  .text()
                  .then(read)
                  .catch(fail)
                  .finally(() => (field.value = ''));
            }}
          />
        </span>
      </div>
      <details class="soft">
        <summary>{t('syllabusExampleAsk')}</summary>
        <pre>{t('syllabusExample')}</pre>
      </details>
    </form>
  );
}
