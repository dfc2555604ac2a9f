import { type CoursePack, PARTS, type PackPart } from '#lib/exchange/course-pack.ts';
import type { PackLook } from '#lib/store/actions/packs.ts';
import { dayInWords } from '#lib/exchange/reference.ts';
import { topicName } from '../../parts/topic-name.ts';
import { t } from '../../text.ts';

type Changed = PackLook['merged']['changes'][PackPart];
type Outcome = keyof Changed;

/** Any row of a pack, by what the student knows it as. */
interface Row {
  id: string;
  code?: string;
  title?: string;
  text?: string;
  prompt?: string;
}

const PART_NAMES = {
  topics: 'packTopics',
  statements: 'packStatements',
  questions: 'packQuestions',
  lessons: 'packLessons',
} as const satisfies Record<PackPart, string>;

const OUTCOMES = {
  added: 'packAdded',
  changed: 'packChanged',
  dropped: 'packDropped',
  kept: 'packKept',
  staying: 'packStaying',
} as const satisfies Record<Outcome, string>;

/** So many are named: nobody reads thousands, and drawing them takes long. */
const MOST_NAMED = 300;

/** What taking a pack in would do: the course it brings, or what it adds, changes and drops in one that is there. */
export function PackPreview({ look }: { look: PackLook }) {
  const { pack, deck, merged, isOlder } = look;
  const { changes } = merged;
  const lists = PARTS.flatMap((part) =>
    (Object.keys(OUTCOMES) as Outcome[]).map((outcome) => ({
      part,
      outcome,
      rows: changes[part][outcome] as Row[],
    })),
  ).filter(({ rows }) => rows.length > 0);
  return (
    <>
      <h3>{pack.course.name}</h3>
      <p class="soft">{t('packSaved', new Date(pack.savedAt).toLocaleDateString())}</p>
      {!deck && <p>{t('packNew', examText(pack))}</p>}
      {deck && <p>{t('packUpdate')}</p>}
      {isOlder && <p class="remark">{t('packOlder')}</p>}
      {deck && changes.course.isChanged && (
        <p>{t('packCourseChanged', merged.course.name, dayText(merged.course.examDay))}</p>
      )}
      {deck && changes.course.isKept && <p>{t('packCourseKept')}</p>}
      {lists.length === 0 && !changes.course.isChanged && <p>{t('packNothing')}</p>}
      {lists.map(({ part, outcome, rows }) => (
        <details key={`${part} ${outcome}`}>
          <summary>{t(OUTCOMES[outcome], t(PART_NAMES[part]), rows.length)}</summary>
          <ul class="plain-list">
            {rows.slice(0, MOST_NAMED).map((row) => (
              <li key={row.id} class="wrap">
                {outcome === 'changed' ? (
                  <Reworded row={row} before={rowIn(look, part, row.id)} />
                ) : (
                  nameOf(row)
                )}
              </li>
            ))}
            {rows.length > MOST_NAMED && <li class="soft">{t('packMore', rows.length - MOST_NAMED)}</li>}
          </ul>
        </details>
      ))}
    </>
  );
}

const rowIn = ({ deck }: PackLook, part: PackPart, id: string): Row | undefined =>
  (deck?.[part] as Row[] | undefined)?.find((row) => row.id === id);

function Reworded({ row, before }: { row: Row; before: Row | undefined }) {
  const name = nameOf(row);
  if (!before || nameOf(before) === name) return <>{name}</>;
  return (
    <>
      <del>{nameOf(before)}</del> <ins>{name}</ins>
    </>
  );
}

const nameOf = ({ code = '', title, text, prompt }: Row): string =>
  prompt ?? topicName({ code, title: title ?? text ?? '' });

const dayText = (day: string | null): string => (day === null ? t('examUnknown') : dayInWords(day));

function examText({ course, topics, statements, questions }: CoursePack): string {
  return [
    course.examDay === null ? t('examUnknown') : `${t('examDay')}: ${dayInWords(course.examDay)}`,
    ...(
      [
        ['packTopics', topics],
        ['packStatements', statements],
        ['packQuestions', questions],
      ] as const
    ).map(([name, rows]) => `${t(name)}: ${rows.length}`),
  ].join(' · ');
}
