import type { Clip } from '#lib/model/clip.ts';
import { COPIED_PART, copiedFrom } from '#lib/notes/copied.ts';
import { changeClip } from '#lib/store/actions/clips.ts';
import { useDeck } from '../../deck/deck-context.tsx';
import { useAction } from '../../deck/use-action.ts';
import { Mark } from '../../parts/mark.tsx';
import { Passage } from '../../parts/passage.tsx';
import { Trouble } from '../../parts/trouble.tsx';
import { t } from '../../text.ts';
import { OwnWords } from '../own-words.tsx';
import { linkTo } from '../route.ts';
import { ClipTicks } from '../statement-ticks.tsx';
import { Unclear } from './unclear.tsx';
import type { CourseNotes } from './use-notes.ts';

interface ReadCardProps {
  clip: Clip;
  notes: CourseNotes;
  topicId: string;
}

/** A passage with the student's own words below it, and how far it is understood. */
export function ReadCard({ clip, notes, topicId }: ReadCardProps) {
  const db = useDeck();
  const action = useAction();
  const source = notes.sources.find(({ id }) => id === clip.sourceId);
  const others = notes.clips.filter(({ id, topicIds }) => id !== clip.id && topicIds.includes(topicId));
  return (
    <article class="sheet stack read-card" aria-label={clip.text.slice(0, 60)}>
      <p class="soft">
        <a href={linkTo(`clip/${clip.id}`)}>{source?.title || source?.site || t('clip')}</a>
      </p>
      {/* Beside each other where there is room for it. */}
      <div class="read-words">
        <Passage
          html={clip.html}
          pictureIds={clip.pictureIds}
          label={`${t('slipPassage')}: ${clip.text.slice(0, 60)}`}
        />
        <div class="stack">
          <OwnWords clip={clip} />
          <Understanding clip={clip} />
        </div>
      </div>
      <Unclear place={{ store: 'clips', id: clip.id }} row={clip} label={t('unclearMark')} clips={others} />
      <ClipTicks
        topics={notes.topics}
        statements={notes.statements}
        topicIds={[topicId]}
        ticked={clip.statementIds}
        tick={(statementIds) => void action.run(() => changeClip(db, clip.id, { statementIds }, Date.now()))}
      />
      <Trouble text={action.trouble} />
    </article>
  );
}

/** Whether a passage counts as understood, and what it still takes. */
function Understanding({ clip: { text, ownWords, unclear } }: { clip: Clip }) {
  if (ownWords.trim() === '') return <p class="remark">{t('readOwnFirst')}</p>;
  const { runs, part } = copiedFrom(text, ownWords);
  const quoted = runs.map(({ from, to }) => `“${shortened(ownWords.slice(from, to))}”`).join(', ');
  return (
    <>
      {runs.length > 0 && <p class="remark wrap">{t('readCopied', quoted)}</p>}
      {part < COPIED_PART && !unclear && (
        <p class="row">
          <Mark judgement="full" /> {t('readIsUnderstood')}
        </p>
      )}
    </>
  );
}

const shortened = (words: string): string => {
  const all = [...words];
  return all.length > 120 ? `${all.slice(0, 60).join('')} … ${all.slice(-50).join('')}` : words;
};
