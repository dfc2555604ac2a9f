import { useMemo } from 'preact/hooks';
import type { Topic } from '#lib/model/topic.ts';
import { buildSyllabus } from '#lib/syllabus/build-syllabus.ts';
import { type SyllabusChanges, compareSyllabus, isUnchanged } from '#lib/syllabus/compare-syllabus.ts';
import type { OutlineDraftRow } from '#lib/syllabus/outline-row.ts';
import type { CourseDeck } from '#lib/store/course-deck.ts';
import { topicName } from '../../parts/topic-name.ts';
import { t, tn } from '../../text.ts';

interface ChangesProps {
  deck: CourseDeck;
  rows: OutlineDraftRow[];
  change(rows: OutlineDraftRow[]): void;
}

/** What saving would add, drop and rename; the student may say that a topic is, or is not, an old one. */
export function Changes({ deck, rows, change }: ChangesProps) {
  const changes = useMemo(() => changesOf(deck, rows), [deck, rows]);
  const { added, dropped, renamed, moved } = changes;
  /** The row of a topic that would be saved: rows without any text are not. */
  const rowOf = ({ order }: Topic) => rows.filter((row) => row.text.trim() || row.code.trim())[order]!;
  const put = (row: OutlineDraftRow, next: OutlineDraftRow) =>
    change(rows.map((one) => (one === row ? next : one)));
  const apart = (topic: Topic) => {
    const { id: _id, ...row } = rowOf(topic);
    put(rowOf(topic), { ...row, isNew: true });
  };
  const same = (old: Topic, topic: Topic) => {
    const { isNew: _isNew, ...row } = rowOf(topic);
    put(rowOf(topic), { ...row, id: old.id });
  };
  return (
    <section class="remark stack" aria-label={t('changesTitle')}>
      <h2>{t('changesTitle')}</h2>
      <p>{isUnchanged(changes) ? t('changesNone') : summary(changes)}</p>
      <Names title={tn('changesAdded', added.length)} topics={added} />
      {dropped.length > 0 && (
        <details>
          <summary>{tn('changesDropped', dropped.length)}</summary>
          <p class="soft">{t('changesDroppedHow')}</p>
          <ul class="plain-list">
            {dropped.map((topic) => (
              <Dropped key={topic.id} topic={topic} deck={deck} added={added} same={same} />
            ))}
          </ul>
        </details>
      )}
      {renamed.length > 0 && (
        <details>
          <summary>{tn('changesRenamed', renamed.length)}</summary>
          <ul class="plain-list">
            {renamed.map(({ before, after }) => (
              <li key={after.id} class="row spread">
                <span>
                  <del>{topicName(before)}</del> <ins>{topicName(after)}</ins>
                </span>
                <button
                  class="plain"
                  aria-label={t('changesApartNamed', topicName(before))}
                  onClick={() => apart(after)}
                >
                  {t('changesApart')}
                </button>
              </li>
            ))}
          </ul>
        </details>
      )}
      <Names title={tn('changesMoved', moved.length)} topics={moved.map(({ after }) => after)} />
    </section>
  );
}

function changesOf(deck: CourseDeck, rows: OutlineDraftRow[]): SyllabusChanges {
  let made = 0;
  const before = { topics: deck.topics, statements: deck.statements };
  const built = buildSyllabus(rows, before, {
    courseId: deck.course.id,
    now: 0,
    // Never saved: saving builds anew.
    newId: () => `new ${++made}`,
  });
  return compareSyllabus(before, built);
}

function summary({ added, dropped, renamed, moved, statements }: SyllabusChanges): string {
  return [
    t('changesTopics', added.length, dropped.length, renamed.length, moved.length),
    t('changesStatements', statements.added.length, statements.dropped.length, statements.reworded),
  ].join(' ');
}

function Names({ title, topics }: { title: string; topics: Topic[] }) {
  if (topics.length === 0) return null;
  return (
    <details>
      <summary>{title}</summary>
      <ul class="plain-list">
        {topics.map((topic) => (
          <li key={topic.id}>{topicName(topic)}</li>
        ))}
      </ul>
    </details>
  );
}

interface DroppedProps {
  topic: Topic;
  deck: CourseDeck;
  added: Topic[];
  same(old: Topic, topic: Topic): void;
}

function Dropped({ topic, deck, added, same }: DroppedProps) {
  const clips = deck.clips.filter(({ topicIds }) => topicIds.includes(topic.id)).length;
  return (
    <li class="stack">
      <span>
        {topicName(topic)} <span class="soft">{tn('changesClips', clips)}</span>
      </span>
      {added.length > 0 && (
        <select
          aria-label={t('changesIsNowNamed', topicName(topic))}
          value=""
          onChange={(event) => {
            const found = added.find(({ id }) => id === event.currentTarget.value);
            if (found) same(topic, found);
          }}
        >
          <option value="">{t('changesIsNow')}</option>
          {added.map((one) => (
            <option key={one.id} value={one.id}>
              {topicName(one)}
            </option>
          ))}
        </select>
      )}
    </li>
  );
}
