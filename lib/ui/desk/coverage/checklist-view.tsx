import { useMemo } from 'preact/hooks';
import type { Statement, Topic } from '#lib/model/topic.ts';
import type { TopicCoverage } from '#lib/syllabus/coverage.ts';
import { activeTopics } from '#lib/syllabus/tree.ts';
import type { Standing } from '../../derive/next-up.ts';
import { coverDeck } from '../../derive/progress.ts';
import { topicName } from '../../parts/topic-name.ts';
import { percent, t } from '../../text.ts';
import { linkTo } from '../route.ts';

/** The syllabus on paper: what is there by the deck, and boxes for student and teacher to tick. */
export function ChecklistView({ standing: { deck, progress } }: { standing: Standing }) {
  const rows = useMemo(
    () => new Map(coverDeck(deck, progress).topics.map((row) => [row.topicId, row])),
    [deck, progress],
  );
  const statements = useMemo(
    () =>
      Map.groupBy(
        deck.statements.filter(({ off }) => !off),
        ({ topicId }) => topicId,
      ),
    [deck.statements],
  );
  return (
    <div class="stack checklist">
      <div class="row apart">
        <h1>{t('checklistTitle', deck.course.name)}</h1>
        <p class="row screen-only">
          <a href={linkTo('coverage')}>{t('pageCoverage')}</a>
          <button class="main" onClick={() => print()}>
            {t('print')}
          </button>
        </p>
      </div>
      <p class="soft">{t('checklistHint', new Date().toLocaleDateString())}</p>
      <table class="numbers">
        <thead>
          <tr>
            <th scope="col">{t('topic')}</th>
            <th scope="col">{t('coverageShare')}</th>
            <th scope="col">{t('checklistClips')}</th>
            <th scope="col">{t('checklistQuestions')}</th>
            <th scope="col">{t('coverageSecured')}</th>
            <th scope="col">{t('checklistStudent')}</th>
            <th scope="col">{t('checklistTeacher')}</th>
          </tr>
        </thead>
        <tbody>
          {activeTopics(deck.topics).flatMap((topic) => [
            <TopicRow key={topic.id} topic={topic} row={rows.get(topic.id)} />,
            ...(statements.get(topic.id) ?? []).map((one) => <StatementRow key={one.id} statement={one} />),
          ])}
        </tbody>
      </table>
    </div>
  );
}

function TopicRow({ topic, row }: { topic: Topic; row: TopicCoverage | undefined }) {
  if (!row)
    return (
      <tr class="above">
        <th scope="rowgroup" colSpan={7}>
          {topicName(topic)}
        </th>
      </tr>
    );
  const { evidence } = row;
  return (
    <tr>
      <th scope="row">{topicName(topic)}</th>
      <td>{percent(row.share, 1)}</td>
      <td>{evidence.clips}</td>
      <td>{evidence.questions + evidence.lines}</td>
      <td>{percent(row.securedPart)}</td>
      <Boxes />
    </tr>
  );
}

function StatementRow({ statement: { code, text } }: { statement: Statement }) {
  return (
    <tr class="statement">
      <td colSpan={5}>
        {code && <span class="soft">{code} </span>}
        {text}
      </td>
      <Boxes />
    </tr>
  );
}

/** Empty boxes, to be ticked on paper. */
const Boxes = () => (
  <>
    <td class="box">
      <span aria-hidden="true" />
    </td>
    <td class="box">
      <span aria-hidden="true" />
    </td>
  </>
);
