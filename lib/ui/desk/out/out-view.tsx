import { useMemo, useState } from 'preact/hooks';
import { type OutChoice, sectionsOf } from '#lib/exchange/out/sections.ts';
import { useDeck } from '../../deck/deck-context.tsx';
import { useAction } from '../../deck/use-action.ts';
import type { Standing } from '../../derive/next-up.ts';
import { Trouble } from '../../parts/trouble.tsx';
import { t, tn } from '../../text.ts';
import { downloadText } from '../download.ts';
import { linkTo } from '../route.ts';
import { type OutFormat, OUT_FORMATS, choiceFor, makeFile } from './make-file.ts';
import { NotesIn } from './notes-in.tsx';

const FORMAT_WORDS = {
  markdown: ['outMarkdown', 'outMarkdownHint'],
  html: ['outHtml', 'outHtmlHint'],
  annotations: ['outAnnotations', 'outAnnotationsHint'],
} as const;

const PARTS = [
  ['notes', 'outNotes'],
  ['questions', 'outQuestions'],
  ['clips', 'outClips'],
] as const;

/** Takes notes, questions and clips out of the deck as a file, and note lines in from one. */
export function OutView({ standing }: { standing: Standing }) {
  return (
    <div class="stack">
      <div class="row apart">
        <h1>{t('outTitle')}</h1>
        <a href={linkTo('course')}>{t('pageCourse')}</a>
      </div>
      <SaveOut standing={standing} />
      <NotesIn standing={standing} />
    </div>
  );
}

function SaveOut({ standing: { deck } }: { standing: Standing }) {
  const db = useDeck();
  const action = useAction();
  const [format, setFormat] = useState<OutFormat>('html');
  const [choice, setChoice] = useState<OutChoice>({ notes: true, questions: true, clips: true });
  const [saved, setSaved] = useState('');
  const count = useMemo(() => counted(deck, choiceFor(format, choice)), [deck, format, choice]);
  const isEmpty = count.notes + count.questions + count.clips === 0;
  const save = async () => {
    const { name, type, text } = await makeFile(db, deck, format, choice, Date.now());
    downloadText(name, type, text);
    setSaved(name);
  };
  return (
    <form
      class="sheet stack narrow"
      aria-labelledby="out-save"
      onInput={() => setSaved('')}
      onSubmit={(event) => {
        event.preventDefault();
        void action.run(save);
      }}
    >
      <h2 id="out-save">{t('outSaveTitle')}</h2>
      <p>{t('outHow')}</p>
      <fieldset class="field">
        <legend>{t('outFormat')}</legend>
        {OUT_FORMATS.map((one) => (
          <label class="check" key={one}>
            <input type="radio" name="out-format" checked={format === one} onChange={() => setFormat(one)} />
            <span>
              {t(FORMAT_WORDS[one][0])}
              <br />
              <span class="soft">{t(FORMAT_WORDS[one][1])}</span>
            </span>
          </label>
        ))}
      </fieldset>
      <fieldset class="field" disabled={format === 'annotations'}>
        <legend>{t('outWhat')}</legend>
        {PARTS.map(([part, words]) => (
          <label class="check" key={part}>
            <input
              type="checkbox"
              checked={choiceFor(format, choice)[part]}
              onChange={(event) => setChoice({ ...choice, [part]: event.currentTarget.checked })}
            />
            {t(words)}
          </label>
        ))}
      </fieldset>
      <p class="soft">
        {[
          tn('outLines', count.notes),
          tn('outQuestionsIn', count.questions),
          tn('outClipsIn', count.clips),
        ].join(' · ')}
      </p>
      {count.clips > 0 && <p class="soft">{t('privateStudy')}</p>}
      <Trouble text={action.trouble} />
      <div class="row">
        <button class="main" disabled={action.busy || isEmpty}>
          {t('outSave')}
        </button>
        <span role="status">{saved && t('fileSaved', saved)}</span>
      </div>
      {isEmpty && <p class="soft">{t('outEmpty')}</p>}
    </form>
  );
}

function counted(deck: Standing['deck'], choice: OutChoice): Record<keyof OutChoice, number> {
  const count = { notes: 0, questions: 0, clips: 0 };
  for (const { lines, questions, clips } of sectionsOf(deck, choice)) {
    count.notes += lines.length;
    count.questions += questions.length;
    count.clips += clips.length;
  }
  return count;
}
