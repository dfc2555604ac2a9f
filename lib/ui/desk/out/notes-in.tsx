import { useEffect, useId, useRef, useState } from 'preact/hooks';
import type { NotesReading, ReadPart } from '#lib/exchange/markdown/read-notes.ts';
import { StudentError } from '#lib/model/student-error.ts';
import { addLines } from '#lib/store/actions/notes-in.ts';
import { decodeText } from '#lib/syllabus/bring-in/decode-text.ts';
import { activeTopics } from '#lib/syllabus/tree.ts';
import { useDeck } from '../../deck/deck-context.tsx';
import { useAction } from '../../deck/use-action.ts';
import type { Standing } from '../../derive/next-up.ts';
import { topicName } from '../../parts/topic-name.ts';
import { FileButton } from '../../parts/file-button.tsx';
import { Trouble } from '../../parts/trouble.tsx';
import { Words } from '../../parts/words.tsx';
import { useDrop } from '../../pdf/use-drop.ts';
import { sizeText } from '../../pdf/pdf-file.ts';
import { t, tn } from '../../text.ts';

/** The heaviest file that is read as notes, in bytes: a large course with its pictures. */
const HEAVIEST_NOTES = 100_000_000;

/** A line that the deck has already is not brought in again. */
const keyOf = (topicId: string | null, { lead, rest }: { lead: string; rest: string }): string =>
  JSON.stringify([topicId, lead.trim(), rest.trim()]);

/** Note lines out of a Markdown file: what is in it is shown before anything is written. */
export function NotesIn({ standing }: { standing: Standing }) {
  const action = useAction();
  const [reading, setReading] = useState<NotesReading | null>(null);
  const [added, setAdded] = useState<number | null>(null);
  const open = (file: File) => {
    setReading(null);
    setAdded(null);
    void action.run(async () => {
      if (file.size > HEAVIEST_NOTES)
        throw new StudentError('errorNotesHeavy', sizeText(file.size), sizeText(HEAVIEST_NOTES));
      const text = decodeText(new Uint8Array(await file.arrayBuffer()));
      const { readNotes } = await import('#lib/exchange/markdown/read-notes.ts');
      setReading(readNotes(text, standing.deck.topics));
    });
  };
  const isOver = useDrop(open);
  return (
    <section
      class={isOver ? 'sheet stack narrow drop-over' : 'sheet stack narrow'}
      aria-labelledby="notes-in"
    >
      <h2 id="notes-in">{t('outInTitle')}</h2>
      <p>{t('outInHow')}</p>
      <div class="row">
        <FileButton
          id="notes-file"
          label={t('outInOpen')}
          accept=".md,.markdown,.txt,text/markdown,text/plain"
          open={([file]) => open(file!)}
        />
        <span class="soft">{t('outInDrop')}</span>
      </div>
      <Trouble text={action.trouble} />
      <p role="status" class={added === null ? 'unseen' : 'remark'}>
        {added !== null && tn('outInAdded', added)}
      </p>
      {reading && (
        <Preview
          standing={standing}
          reading={reading}
          leave={() => setReading(null)}
          done={(count) => {
            setReading(null);
            setAdded(count);
          }}
        />
      )}
    </section>
  );
}

interface PreviewProps {
  standing: Standing;
  reading: NotesReading;
  leave(): void;
  done(count: number): void;
}

function Preview({ standing: { deck }, reading, leave, done }: PreviewProps) {
  const db = useDeck();
  const action = useAction();
  const area = useRef<HTMLDivElement>(null);
  const [topicIds, setTopicIds] = useState(() => reading.parts.map(({ topicId }) => topicId));
  useEffect(() => area.current!.focus(), []);
  const there = new Set(deck.lines.map((line) => keyOf(line.topicId, line)));
  const isThere = (topicId: string | null, line: ReadPart['lines'][number]) =>
    there.has(keyOf(topicId, line));
  const lines = reading.parts.flatMap((part, i) => {
    const topicId = topicIds[i] ?? null;
    return topicId === null
      ? []
      : part.lines.filter((line) => !isThere(topicId, line)).map((line) => ({ ...line, topicId }));
  });
  const known = reading.parts.reduce(
    (sum, part, i) => sum + part.lines.filter((line) => isThere(topicIds[i] ?? null, line)).length,
    0,
  );
  const take = async () => {
    if (await action.run(() => addLines(db, deck.course.id, lines, Date.now()))) done(lines.length);
  };
  return (
    <div class="stack" ref={area} tabIndex={-1} role="group" aria-label={t('outInLook')}>
      <h3>{t('outInLook')}</h3>
      {reading.parts.map((part, i) => (
        <PartTopic
          key={i}
          part={part}
          topicId={topicIds[i] ?? null}
          topics={activeTopics(deck.topics)}
          choose={(topicId) => setTopicIds(topicIds.map((one, place) => (place === i ? topicId : one)))}
        />
      ))}
      {known > 0 && <p class="soft">{tn('outInKnown', known)}</p>}
      {reading.others > 0 && <p class="soft">{tn('outInOthers', reading.others)}</p>}
      <Trouble text={action.trouble} />
      <div class="row">
        <button class="main" disabled={action.busy || lines.length === 0} onClick={() => void take()}>
          {tn('outInTake', lines.length)}
        </button>
        <button onClick={leave}>{t('leaveAsItWas')}</button>
      </div>
    </div>
  );
}

/** More of a line is not shown, in characters. */
const LONG = 160;

interface PartTopicProps {
  part: ReadPart;
  topicId: string | null;
  topics: Standing['deck']['topics'];
  choose(topicId: string | null): void;
}

/** The lines under one heading, and the topic that they are for. */
function PartTopic({ part, topicId, topics, choose }: PartTopicProps) {
  const id = useId();
  const [first] = part.lines;
  const text = [first?.lead, first?.rest].filter(Boolean).join(' · ');
  return (
    <div class="field">
      <label for={id} class="wrap">
        {part.heading || t('outInNoHeading')} <span class="soft">{tn('outInLines', part.lines.length)}</span>
      </label>
      <p class="soft wrap">{text.length > LONG ? `${text.slice(0, LONG)} …` : <Words text={text} />}</p>
      <select id={id} value={topicId ?? ''} onChange={(event) => choose(event.currentTarget.value || null)}>
        <option value="">{t('outInLeave')}</option>
        {topics.map((topic) => (
          <option key={topic.id} value={topic.id}>
            {topicName(topic)}
          </option>
        ))}
      </select>
    </div>
  );
}
