import { useState } from 'preact/hooks';
import type { TextFormat } from '#lib/syllabus/bring-in/read-text.ts';
import { t } from '../../text.ts';
import type { DraftSource } from './draft.ts';
import { FORMATS } from './formats.ts';

interface ReadAsProps {
  source: DraftSource;
  readText(text: string, format: TextFormat): void;
  readPages(source: Extract<DraftSource, { is: 'pdf' }>): void;
}

/** What the draft was read as; the student may say that it is something else, or choose other pages. */
export function ReadAs({ source, readText, readPages }: ReadAsProps) {
  if (source.is === 'saved') return null;
  if (source.is === 'pdf') return <Pages source={source} readPages={readPages} />;
  return (
    <div class="field narrow">
      <label for="read-as">{t('syllabusReadAs')}</label>
      <select
        id="read-as"
        value={source.format}
        onChange={(event) => readText(source.text, event.currentTarget.value as TextFormat)}
      >
        {FORMATS.map(({ format, name }) => (
          <option key={format} value={format}>
            {t(name)}
          </option>
        ))}
      </select>
    </div>
  );
}

function Pages({ source, readPages }: Omit<ReadAsProps, 'readText' | 'source'> & { source: PdfSource }) {
  const [from, setFrom] = useState(source.from);
  const [to, setTo] = useState(source.to);
  const last = source.pages.at(-1)?.page ?? 1;
  return (
    <form
      class="stack"
      onSubmit={(event) => {
        event.preventDefault();
        readPages({ ...source, from: Math.min(from, to), to: Math.max(from, to) });
      }}
    >
      {source.pages.length < source.of && (
        <p class="remark" role="status">
          {t('syllabusStopped', source.pages.length, source.of)}
        </p>
      )}
      <p class="soft">{t('syllabusPagesHow')}</p>
      <div class="row ends">
        <PageField id="pages-from" label={t('syllabusFrom')} value={from} last={last} set={setFrom} />
        <PageField id="pages-to" label={t('syllabusTo')} value={to} last={last} set={setTo} />
        <button>{t('syllabusReadPages')}</button>
      </div>
    </form>
  );
}

type PdfSource = Extract<DraftSource, { is: 'pdf' }>;

interface PageFieldProps {
  id: string;
  label: string;
  value: number;
  last: number;
  set(page: number): void;
}

function PageField({ id, label, value, last, set }: PageFieldProps) {
  return (
    <div class="field page-field">
      <label for={id}>{label}</label>
      <input
        id={id}
        type="number"
        min={1}
        max={last}
        required
        value={value}
        onInput={(event) => set(event.currentTarget.valueAsNumber)}
      />
    </div>
  );
}
