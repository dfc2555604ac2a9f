import { useId } from 'preact/hooks';
import { topicName } from '../parts/topic-name.ts';
import { t, tn } from '../text.ts';
import { type Asked, filtersSet } from './asked.ts';
import { type Names, sourceName } from './use-names.ts';

interface FiltersProps {
  asked: Asked;
  names: Names;
  courseId: string;
  change(part: Partial<Asked>): void;
}

/** What is searched among: a topic, a source, what is unclear, when it was kept, which courses. */
export function Filters({ asked, names, courseId, change }: FiltersProps) {
  const id = useId();
  const set = filtersSet(asked);
  const sources = names.sources.toSorted((a, b) => sourceName(a).localeCompare(sourceName(b)));
  return (
    <details class="search-filters" open={set > 0}>
      <summary>
        {t('searchFilters')}
        {set > 0 && <span class="soft"> · {tn('searchFiltersSet', set)}</span>}
      </summary>
      <div class="filter-fields">
        <div class="field">
          <label for={`${id}topic`}>{t('topic')}</label>
          <select
            id={`${id}topic`}
            value={asked.topicId}
            onChange={(event) => change({ topicId: event.currentTarget.value })}
          >
            <option value="">{t('searchAnyTopic')}</option>
            <TopicOptions names={names} courseId={courseId} isEveryCourse={asked.isEveryCourse} />
          </select>
        </div>
        <div class="field">
          <label for={`${id}source`}>{t('searchSource')}</label>
          <select
            id={`${id}source`}
            value={asked.sourceId}
            onChange={(event) => change({ sourceId: event.currentTarget.value })}
          >
            <option value="">{t('searchAnySource')}</option>
            {sources.map((source) => (
              <option key={source.id} value={source.id}>
                {sourceName(source)}
              </option>
            ))}
          </select>
        </div>
        {(['since', 'until'] as const).map((end) => (
          <div class="field" key={end}>
            <label for={`${id}${end}`}>{t(end === 'since' ? 'searchSince' : 'searchUntil')}</label>
            <input
              id={`${id}${end}`}
              type="date"
              value={asked[end]}
              onInput={(event) => change({ [end]: event.currentTarget.value })}
            />
          </div>
        ))}
        <label class="check">
          <input
            type="checkbox"
            checked={asked.isUnclear}
            onChange={(event) => change({ isUnclear: event.currentTarget.checked })}
          />
          {t('searchUnclear')}
        </label>
      </div>
    </details>
  );
}

function TopicOptions({
  names,
  courseId,
  isEveryCourse,
}: Pick<FiltersProps, 'names' | 'courseId'> & Pick<Asked, 'isEveryCourse'>) {
  const optionsOf = (id: string) =>
    names.topics
      .filter((topic) => topic.courseId === id)
      .map((topic) => (
        <option key={topic.id} value={topic.id}>
          {topicName(topic)}
        </option>
      ));
  if (!isEveryCourse) return <>{optionsOf(courseId)}</>;
  return (
    <>
      {names.courses.map(({ id, name }) => (
        <optgroup key={id} label={name}>
          {optionsOf(id)}
        </optgroup>
      ))}
    </>
  );
}
