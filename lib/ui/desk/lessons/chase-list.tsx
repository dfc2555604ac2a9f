import { useState } from 'preact/hooks';
import { type Missing, peopleIn } from '#lib/syllabus/chase.ts';
import { CopyText } from '../../parts/copy-text.tsx';
import { t } from '../../text.ts';
import { linkTo } from '../route.ts';
import { Held, lessonName, wantedText } from './lesson-list.tsx';

interface ChaseListProps {
  missing: Missing[];
  topicNameOf(id: string): string;
}

/** What is missing, from whom and by when, the most pressing first; to be copied into a message. */
export function ChaseList({ missing, topicNameOf }: ChaseListProps) {
  const [person, setPerson] = useState('');
  const people = peopleIn(missing);
  const chosen = people.includes(person) ? person : '';
  const shown = missing.filter(({ lesson }) => chosen === '' || lesson.wantedFrom === chosen);
  if (missing.length === 0) return <p class="soft">{t('chaseNone')}</p>;
  return (
    <>
      {people.length > 1 && (
        <div class="field narrow">
          <label for="chase-from">{t('chaseFrom')}</label>
          <select id="chase-from" value={chosen} onChange={(event) => setPerson(event.currentTarget.value)}>
            <option value="">{t('chaseEveryone')}</option>
            {people.map((one) => (
              <option key={one}>{one}</option>
            ))}
          </select>
        </div>
      )}
      <ul class="items chase">
        {shown.map(({ lesson, isOverdue }) => (
          <li key={lesson.id}>
            <Held lesson={lesson} />
            <p class="soft wrap">
              {isOverdue && (
                <>
                  <strong class="overdue">{t('chaseOverdue')}</strong>{' '}
                </>
              )}
              {wantedText(lesson)}
              {wantedText(lesson) !== '' && ' · '}
              <a href={linkTo(`topic/${lesson.topicId}`)}>{topicNameOf(lesson.topicId)}</a>
            </p>
          </li>
        ))}
      </ul>
      <CopyText
        text={chaseText(shown, topicNameOf, chosen === '')}
        button={t('chaseCopy')}
        label={t('chaseTitle')}
        selected={t('chaseSelected')}
        rows={Math.min(12, shown.length + 2)}
      />
    </>
  );
}

/** The list as the lines of a message. */
function chaseText(missing: Missing[], topicNameOf: (id: string) => string, withNames: boolean): string {
  const lines = missing.map(({ lesson }) => {
    const wanted = wantedText(withNames ? lesson : { ...lesson, wantedFrom: '' });
    return `- ${lessonName(lesson)} (${[topicNameOf(lesson.topicId), wanted].filter(Boolean).join('; ')})`;
  });
  return [t('chaseMessage'), ...lines].join('\n');
}
