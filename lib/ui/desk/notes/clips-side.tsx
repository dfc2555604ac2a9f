import { useMemo } from 'preact/hooks';
import type { Clip } from '#lib/model/clip.ts';
import { sentencesOf } from '#lib/notes/draft/sentences.ts';
import { changeClip } from '#lib/store/actions/clips.ts';
import { useDeck } from '../../deck/deck-context.tsx';
import { useAction } from '../../deck/use-action.ts';
import { Passage } from '../../parts/passage.tsx';
import { Still } from '../../parts/still.tsx';
import { Trouble } from '../../parts/trouble.tsx';
import { Words } from '../../parts/words.tsx';
import { t, tn } from '../../text.ts';
import { linkTo } from '../route.ts';
import type { OutlineEditor } from './outline-editor.ts';
import type { CourseNotes } from './use-notes.ts';

interface ClipsSideProps {
  notes: CourseNotes;
  topicId: string;
  editor: OutlineEditor;
}

/** The clips of a topic, to write lines from: own words first, since they are what is condensed. */
export function ClipsSide({ notes, topicId, editor }: ClipsSideProps) {
  const clips = notes.clips.filter(({ topicIds }) => topicIds.includes(topicId));
  const used = useMemo(() => Map.groupBy(notes.lines, ({ clipId }) => clipId), [notes.lines]);
  const isIn = clips.filter(({ leftOut }) => leftOut === null);
  const isOut = clips.filter(({ leftOut }) => leftOut !== null);
  const isInLine = editor.spot !== null;
  const card = (clip: Clip) => {
    const lineCount = used.get(clip.id)?.length ?? 0;
    return (
      <Still key={clip.id} of={[clip, lineCount, isInLine]}>
        {() => <ClipCard clip={clip} lineCount={lineCount} editor={editor} isInLine={isInLine} />}
      </Still>
    );
  };
  if (clips.length === 0) return <p class="remark">{t('notesNoClips')}</p>;
  return (
    <>
      {isIn.map(card)}
      {isOut.length > 0 && (
        <details>
          <summary>{tn('notesLeftOut', isOut.length)}</summary>
          <div class="stack">{isOut.map(card)}</div>
        </details>
      )}
    </>
  );
}

interface ClipCardProps {
  clip: Clip;
  lineCount: number;
  editor: OutlineEditor;
  /** A diagram can be placed below the line in hand. */
  isInLine: boolean;
}

function ClipCard({ clip, lineCount, editor, isInLine }: ClipCardProps) {
  const db = useDeck();
  const action = useAction();
  const leave = (leftOut: Clip['leftOut']) =>
    void action.run(() => changeClip(db, clip.id, { leftOut }, Date.now()));
  const hasWords = clip.ownWords.trim() !== '';
  return (
    <article class="sheet stack clip-card" aria-label={clip.text.slice(0, 60)}>
      {clip.unclear && (
        <p class="remark">
          {t('notesUnclearFirst')} <a href={linkTo(`read/${clip.topicIds[0]}`)}>{t('readTopic')}</a>
        </p>
      )}
      {hasWords && (
        <p class="own wrap">
          <Words text={clip.ownWords} />
        </p>
      )}
      <details open={!hasWords}>
        <summary>{t('slipPassage')}</summary>
        <Passage
          html={clip.html}
          pictureIds={clip.pictureIds}
          label={`${t('slipPassage')}: ${clip.text.slice(0, 60)}`}
        />
      </details>
      <p class="row">
        <button
          // A press would take the selection away before it is used.
          onMouseDown={(event) => event.preventDefault()}
          onClick={() => takeFrom(clip, editor)}
        >
          {hasWords ? t('notesTakeWords') : t('notesTakeSelected')}
        </button>
        {lineCount > 0 && <span class="soft">{tn('notesLinesFrom', lineCount)}</span>}
      </p>
      <p class="row">
        {isInLine &&
          clip.pictureIds.map((id, place) => (
            <button class="plain" key={id} onClick={() => placePicture(editor, id)}>
              {t('notesPlacePicture', place + 1)}
            </button>
          ))}
        {clip.leftOut ? (
          <>
            <span class="soft">{clip.leftOut === 'known' ? t('leftOutKnown') : t('leftOutOff')}</span>
            <button class="plain" onClick={() => leave(null)}>
              {t('takeBackIn')}
            </button>
          </>
        ) : (
          <>
            <button class="plain" onClick={() => leave('known')}>
              {t('leftOutKnown')}
            </button>
            <button class="plain" onClick={() => leave('offSyllabus')}>
              {t('leftOutOff')}
            </button>
          </>
        )}
      </p>
      <Trouble text={action.trouble} />
    </article>
  );
}

/** Puts what is selected in the card, or else the own words sentence by sentence, into the notes. */
function takeFrom(clip: Clip, editor: OutlineEditor): void {
  const selected = getSelection()?.toString().replace(/\s+/g, ' ').trim() ?? '';
  const texts = selected === '' ? sentencesOf(clip.ownWords).map(({ text }) => text) : [selected];
  if (texts.length > 0) editor.add(texts, clip.id);
}

function placePicture(editor: OutlineEditor, id: string): void {
  const line = editor.lines.find((one) => one.id === editor.spot?.id);
  if (line && !line.pictureIds.includes(id)) editor.setPictures(line.id, [...line.pictureIds, id]);
}
