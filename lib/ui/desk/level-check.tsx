import { useEffect, useState } from 'preact/hooks';
import type { Clip } from '#lib/model/clip.ts';
import type { CourseDeck } from '#lib/store/course-deck.ts';
import type { Level } from '#lib/syllabus/level.ts';
import { percent, t, tell } from '../text.ts';

/** Words shown before the student asks for the rest. */
const FIRST_WORDS = 12;

/** What the course says of itself: its syllabus, what the student wrote, and other passages that are understood. */
function* textsOf(deck: CourseDeck, but: Clip): Iterable<string> {
  for (const { title, off } of deck.topics) if (!off) yield title;
  for (const { text, off } of deck.statements) if (!off) yield text;
  for (const { prompt, answer } of deck.questions) yield `${prompt} ${answer}`;
  for (const { lead, rest } of deck.lines) yield `${lead} ${rest}`;
  for (const clip of deck.clips) {
    yield clip.ownWords;
    if (clip.id !== but.id && !clip.unclear && clip.ownWords.trim() !== '') yield clip.text;
  }
}

/** Whether a passage is pitched right: its words that the course has not used. What that takes is loaded here only. */
export function LevelCheck({ deck, clip }: { deck: CourseDeck; clip: Clip }) {
  const [level, setLevel] = useState<Level | null>(null);
  const [trouble, setTrouble] = useState<string | null>(null);
  const [all, setAll] = useState(false);
  useEffect(() => {
    let isLate = false;
    import('#lib/syllabus/level.ts').then(
      ({ levelOf }) => isLate || setLevel(levelOf(clip.text, textsOf(deck, clip))),
      (error: unknown) => setTrouble(tell(error)),
    );
    return () => void (isLate = true);
  }, [deck, clip]);
  if (trouble !== null) return <p class="soft">{trouble}</p>;
  if (!level || clip.text === '') return null;
  const words = level.strange.map(({ word, count }) => (count > 1 ? `${word} (${count})` : word));
  return (
    <section class="sheet stack" aria-label={t('levelTitle')}>
      <h2>{t('levelTitle')}</h2>
      {words.length === 0 ? (
        <p>{t('levelNone')}</p>
      ) : (
        <>
          <p>{t('levelWords', percent(level.part))}</p>
          <p class="own wrap">{(all ? words : words.slice(0, FIRST_WORDS)).join(', ')}</p>
          {words.length > FIRST_WORDS && !all && (
            <div>
              <button class="plain" onClick={() => setAll(true)}>
                {t('levelAll', words.length)}
              </button>
            </div>
          )}
          <p class="soft">{t('levelHint')}</p>
        </>
      )}
    </section>
  );
}
