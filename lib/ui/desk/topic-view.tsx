import { useMemo } from 'preact/hooks';
import type { Clip } from '#lib/model/clip.ts';
import { readSettings } from '#lib/store/actions/courses.ts';
import { useDeck } from '../deck/deck-context.tsx';
import type { Standing } from '../derive/next-up.ts';
import { coverDeck } from '../derive/progress.ts';
import { topicName } from '../parts/topic-name.ts';
import { Words } from '../parts/words.tsx';
import { t, tn } from '../text.ts';
import { useLive } from '../use-live.ts';
import { EvidenceList } from './coverage/evidence-list.tsx';
import { GapActions } from './coverage/gap-actions.tsx';
import { withBelow } from '../round/choice.ts';
import { Forgetting } from './forgetting.tsx';
import { LineList, QuestionList } from './item-list.tsx';
import { TopicLessons } from './lessons/topic-lessons.tsx';
import { linkTo } from './route.ts';
import { statementsOf } from './statement-ticks.tsx';
import { TopicAsks } from './topic-asks.tsx';
import { WriteLine, WriteQuestion } from './write-item.tsx';

/** One topic: what the syllabus asks, what was kept, what was written. */
export function TopicView({ standing, id }: { standing: Standing; id: string }) {
  const db = useDeck();
  const { deck, progress } = standing;
  const settings = useLive(() => readSettings(db), ['settings'], 'settings');
  const row = useMemo(
    () => coverDeck(deck, progress).topics.find(({ topicId }) => topicId === id),
    [deck, progress, id],
  );
  const topic = deck.topics.find((one) => one.id === id);
  if (!topic) return <h1>{t('topicGone')}</h1>;
  const here = <T extends { topicId: string }>(items: T[]) => items.filter(({ topicId }) => topicId === id);
  const clips = deck.clips.filter((clip) => clip.topicIds.includes(id));
  const below = deck.topics.filter(({ parentId, off }) => parentId === id && !off);
  const statements = statementsOf(deck.statements, id);
  const place = { courseId: deck.course.id, topicId: id, clipId: null, statements, ticked: [] };
  const aimed = settings.state === 'ready' && settings.value.aimedTopicId === id;
  return (
    <div class="stack">
      <h1>{topicName(topic)}</h1>
      <nav class="row" aria-label={t('notesSteps')}>
        <a href={linkTo(`read/${id}`)}>{t('readTopic')}</a>
        <a href={linkTo(`condense/${id}`)}>{t('condenseTopic')}</a>
      </nav>
      {topic.dropped && (
        <p class="remark">
          {t('topicDropped')} <a href={linkTo('syllabus')}>{t('pageSyllabus')}</a>
        </p>
      )}
      {topic.off && !topic.dropped && <p class="remark">{t('topicOff')}</p>}
      <div class="two">
        <section class="sheet stack">
          <h2>{t('topicAsks')}</h2>
          <TopicAsks standing={standing} id={id} />
          {below.length > 0 && (
            <ul class="plain-list">
              {below.map((child) => (
                <li key={child.id}>
                  <a href={linkTo(`topic/${child.id}`)}>{topicName(child)}</a>
                </li>
              ))}
            </ul>
          )}
        </section>
        {row && (
          <section class="sheet stack">
            <h2>{t('topicStands')}</h2>
            <EvidenceList evidence={row.evidence} />
            <GapActions row={row} aimed={aimed} standing={standing} />
          </section>
        )}
      </div>
      <Curve standing={standing} id={id} />
      <ClipsHere clips={clips} />
      <TopicLessons standing={standing} id={id} />
      <div class="two">
        <section class="sheet stack">
          <h2>{t('questionsTopic')}</h2>
          <QuestionList questions={here(deck.questions)} standing={standing} />
          <WriteQuestion place={place} questions={deck.questions} />
        </section>
        <section class="sheet stack">
          <h2>{t('linesTopic')}</h2>
          <p class="soft">{t('lineHint')}</p>
          <LineList lines={here(deck.lines)} standing={standing} />
          <WriteLine place={place} />
        </section>
      </div>
    </div>
  );
}

/** The clips of a topic, with what the student says of them. */
function ClipsHere({ clips }: { clips: Clip[] }) {
  return (
    <section class="sheet stack">
      <h2>{tn('topicClips', clips.length)}</h2>
      <ul class="plain-list">
        {clips.map((clip) => (
          <li key={clip.id}>
            <a href={linkTo(`clip/${clip.id}`)}>{clip.text.slice(0, 140)}</a>
            {clip.unclear && <span class="soft"> · {t('unclear')}</span>}
            {clip.ownWords !== '' && (
              <p class="own wrap">
                <Words text={clip.ownWords} />
              </p>
            )}
          </li>
        ))}
      </ul>
    </section>
  );
}

/** How the items of a topic, and of those below it, are being forgotten; nothing where there are none. */
function Curve({ standing, id }: { standing: Standing; id: string }) {
  const ids = useMemo(() => {
    const topics = withBelow(standing.deck, id);
    const items = [...standing.progress.items.values()].filter(({ topicId }) => topics.has(topicId));
    return new Set(items.map((item) => item.id));
  }, [standing, id]);
  if (ids.size === 0) return null;
  return (
    <section class="sheet stack">
      <h2>{t('curveTitle')}</h2>
      <Forgetting standing={standing} ids={ids} />
    </section>
  );
}
