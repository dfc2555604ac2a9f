import { useMemo, useState } from 'preact/hooks';
import type { Clip } from '#lib/model/clip.ts';
import type { Draft } from '#lib/notes/draft/draft-questions.ts';
import { changeClip } from '#lib/store/actions/clips.ts';
import { useDeck } from '../deck/deck-context.tsx';
import { useAction } from '../deck/use-action.ts';
import type { Standing } from '../derive/next-up.ts';
import { Passage } from '../parts/passage.tsx';
import { OpenAtPassage } from '../pdf/open-at-passage.tsx';
import { topicNames } from '../parts/topic-name.ts';
import { Trouble } from '../parts/trouble.tsx';
import { t } from '../text.ts';
import { DeleteButton } from './delete-button.tsx';
import { Drafts } from './drafts.tsx';
import { LineList, QuestionList } from './item-list.tsx';
import { LevelCheck } from './level-check.tsx';
import { OwnWords } from './own-words.tsx';
import { Provenance } from './provenance.tsx';
import { linkTo } from './route.ts';
import { ClipTicks, statementsOf } from './statement-ticks.tsx';
import { TopicChoice } from './topic-choice.tsx';
import { WriteLine, WriteQuestion } from './write-item.tsx';

/** One clip: the passage, the student's own words beside it, and what is written from it. */
export function ClipView({ standing, id }: { standing: Standing; id: string }) {
  const { clips, sources } = standing.deck;
  const clip = clips.find((one) => one.id === id);
  if (!clip)
    return (
      <div class="stack">
        <h1>{t('clipGone')}</h1>
        <p>
          {t('clipGoneHint')} <a href={linkTo('aside')}>{t('asideTitle')}</a>
        </p>
      </div>
    );
  const source = sources.find(({ id }) => id === clip.sourceId);
  return (
    <div class="stack">
      <h1>{t('clip')}</h1>
      <div class="two">
        <article class="sheet stack">
          <Passage html={clip.html} pictureIds={clip.pictureIds} label={t('slipPassage')} />
          {source && <Provenance source={source} clip={clip} />}
          {source && <OpenAtPassage clip={clip} source={source} />}
          <div class="row">
            <DeleteButton
              store="clips"
              id={clip.id}
              name={clip.text.slice(0, 60)}
              then={() => (location.hash = linkTo('clips'))}
            />
          </div>
        </article>
        <div class="stack">
          <OwnWords clip={clip} />
          <Tags standing={standing} clip={clip} />
        </div>
      </div>
      <Writing standing={standing} clip={clip} />
      {/* Last: it comes a moment later, and must not move what a finger is on its way to. */}
      <LevelCheck deck={standing.deck} clip={clip} />
    </div>
  );
}

function Tags({ standing, clip }: { standing: Standing; clip: Clip }) {
  const db = useDeck();
  const action = useAction();
  const change = (part: Partial<Pick<Clip, 'topicIds' | 'statementIds' | 'unclear'>>) =>
    void action.run(() => changeClip(db, clip.id, part, Date.now()));
  return (
    <section class="sheet stack">
      <label class="check">
        <input
          type="checkbox"
          checked={clip.unclear}
          onChange={(event) => change({ unclear: event.currentTarget.checked })}
        />
        {t('unclearMark')}
      </label>
      <TopicChoice
        topics={standing.deck.topics}
        chosen={clip.topicIds}
        choose={(topicIds) => change({ topicIds })}
      />
      <ClipTicks
        topics={standing.deck.topics}
        statements={standing.deck.statements}
        topicIds={clip.topicIds}
        ticked={clip.statementIds}
        tick={(statementIds) => change({ statementIds })}
      />
      <Trouble text={action.trouble} />
    </section>
  );
}

function Writing({ standing, clip }: { standing: Standing; clip: Clip }) {
  const { questions, lines, topics, statements, course } = standing.deck;
  const names = useMemo(() => topicNames(topics), [topics]);
  const [picked, setPicked] = useState<string | null>(null);
  const [draft, setDraft] = useState<Draft | null>(null);
  const topicId = clip.topicIds.find((id) => id === picked) ?? clip.topicIds[0];
  if (topicId === undefined) return <p class="remark">{t('tagFirst')}</p>;
  const here = statementsOf(statements, topicId);
  const explained = here.filter(({ id }) => clip.statementIds.includes(id)).map(({ id }) => id);
  // What is written from a clip that explains one thing is most likely on that.
  const ticked = explained.length === 1 ? explained : [];
  const place = { courseId: course.id, topicId, clipId: clip.id, statements: here, ticked };
  const fromHere = ({ clipId }: { clipId: string | null }) => clipId === clip.id;
  return (
    <>
      {clip.topicIds.length > 1 && (
        <div class="field narrow">
          <label for="write-for">{t('writeFor')}</label>
          <select id="write-for" value={topicId} onChange={(event) => setPicked(event.currentTarget.value)}>
            {clip.topicIds.map((id) => (
              <option key={id} value={id}>
                {names(id)}
              </option>
            ))}
          </select>
        </div>
      )}
      <div class="two">
        <section class="sheet stack">
          <h2>{t('questionsHere')}</h2>
          <QuestionList questions={questions.filter(fromHere)} standing={standing} />
          <Drafts clip={clip} questions={questions} use={(one) => setDraft({ ...one })} />
          <WriteQuestion place={place} draft={draft} questions={questions} />
        </section>
        <section class="sheet stack">
          <h2>{t('linesHere')}</h2>
          <p class="soft">{t('lineHint')}</p>
          <LineList lines={lines.filter(fromHere)} standing={standing} />
          <WriteLine place={place} />
        </section>
      </div>
    </>
  );
}
