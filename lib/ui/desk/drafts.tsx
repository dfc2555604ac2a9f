import { useEffect, useMemo, useState } from 'preact/hooks';
import type { Clip } from '#lib/model/clip.ts';
import type { Question } from '#lib/model/item.ts';
import { type Draft, blankQuestion, draftQuestions } from '#lib/notes/draft/draft-questions.ts';
import { objectionsTo } from '#lib/notes/draft/judge-question.ts';
import { Words } from '../parts/words.tsx';
import { t, tn } from '../text.ts';

interface DraftsProps {
  clip: Clip;
  /** Questions of the course: what is asked already is not offered again. */
  questions: readonly Question[];
  /** Puts a draft into the form, where it is changed and added. */
  use(draft: Draft): void;
}

/** Questions that the passage suggests, and the one that asks for words which the student selects in it. */
export function Drafts({ clip, questions, use }: DraftsProps) {
  const [left, setLeft] = useState<readonly string[]>([]);
  const drafts = useMemo(() => draftQuestions(clip.text), [clip.text]);
  const asked = useMemo(() => questions.map(({ prompt }) => prompt), [questions]);
  const offered = drafts.filter(
    ({ prompt }) =>
      !left.includes(prompt) && !objectionsTo(prompt, asked).some(({ kind }) => kind === 'near-copy'),
  );
  return (
    <>
      <ChosenWords clip={clip} use={use} />
      {offered.length > 0 && (
        <details class="drafts">
          <summary>{tn('drafts', offered.length)}</summary>
          <ul class="plain-list">
            {offered.map((draft) => (
              <li key={draft.prompt}>
                <p>
                  <Words text={draft.prompt} />
                </p>
                <p class="soft">
                  <Words text={draft.answer} />
                </p>
                <p class="row">
                  <button onClick={() => use(draft)}>{t('draftUse')}</button>
                  <button class="plain" onClick={() => setLeft([...left, draft.prompt])}>
                    {t('draftLeave')}
                  </button>
                </p>
              </li>
            ))}
          </ul>
        </details>
      )}
    </>
  );
}

/** Asks for the words that are selected in the passage: no signs to be learnt for it. */
function ChosenWords({ clip, use }: Pick<DraftsProps, 'clip' | 'use'>) {
  const [draft, setDraft] = useState<Draft | null>(null);
  useEffect(() => {
    const closing = new AbortController();
    const read = () => setDraft(draftOfSelection(clip.text));
    document.addEventListener('selectionchange', read, { signal: closing.signal });
    return () => closing.abort();
  }, [clip.text]);
  return (
    <p class="row">
      <button
        disabled={!draft}
        // A press would take the selection away before it is used.
        onMouseDown={(event) => event.preventDefault()}
        onClick={() => draft && use(draft)}
      >
        {t('draftChosen')}
      </button>
      <span class="soft">{draft ? draft.answer.slice(0, 60) : t('draftChosenHint')}</span>
    </p>
  );
}

/** The selection in the passage as a question; null where there is none, or it cuts through a formula. */
function draftOfSelection(text: string): Draft | null {
  const selection = getSelection();
  const range = selection && selection.rangeCount > 0 ? selection.getRangeAt(0) : null;
  const around = range?.commonAncestorContainer;
  const passage = (around instanceof Element ? around : around?.parentElement)?.closest('.passage');
  const words = range?.toString().trim() ?? '';
  if (!range || !passage || words === '') return null;
  const before = document.createRange();
  before.setStart(passage, 0);
  before.setEnd(range.startContainer, range.startOffset);
  // The same words may stand in the passage more than once.
  let from = text.indexOf(words);
  for (let passed = occurrences(before.toString(), words); passed > 0 && from >= 0; passed--)
    from = text.indexOf(words, from + 1);
  return from < 0 ? null : blankQuestion(text, from, from + words.length);
}

const occurrences = (text: string, words: string): number => text.split(words).length - 1;

/** What is to be said against the question in hand, beside its field. */
export function Objections({ prompt, questions }: { prompt: string; questions: readonly Question[] }) {
  const others = useMemo(() => questions.map((one) => one.prompt), [questions]);
  const objections = useMemo(() => objectionsTo(prompt, others), [prompt, others]);
  return (
    <div role="status">
      {objections.map((one) => (
        <p class="remark" key={one.kind}>
          {one.kind === 'near-copy' ? t('questionCopy', one.of) : t('questionSequence')}
        </p>
      ))}
    </div>
  );
}
