import { useId, useState } from 'preact/hooks';
import type { Topic } from '#lib/model/topic.ts';
import { activeTopics } from '#lib/syllabus/tree.ts';
import { topicName, topicNames } from '../parts/topic-name.ts';
import { t } from '../text.ts';

interface TopicChoiceProps {
  topics: Topic[];
  chosen: string[];
  choose(topicIds: string[]): void;
}

/** The topics something stands under: take one away, add another. */
export function TopicChoice({ topics, chosen, choose }: TopicChoiceProps) {
  const id = useId();
  const [other, setOther] = useState('');
  const names = topicNames(topics);
  const others = activeTopics(topics).filter((topic) => !chosen.includes(topic.id));
  return (
    <fieldset class="field">
      <legend>{t('topic')}</legend>
      {chosen.length === 0 && <p class="soft">{t('clipUntagged')}</p>}
      {chosen.map((topicId) => (
        <label class="check" key={topicId}>
          <input type="checkbox" checked onChange={() => choose(chosen.filter((one) => one !== topicId))} />
          {names(topicId)}
        </label>
      ))}
      <label for={id} class="soft">
        {t('topicAdd')}
      </label>
      <div class="row nowrap">
        <select id={id} value={other} onChange={(event) => setOther(event.currentTarget.value)}>
          <option value="">{t('topicChoose')}</option>
          {others.map((topic) => (
            <option key={topic.id} value={topic.id}>
              {topicName(topic)}
            </option>
          ))}
        </select>
        <button
          type="button"
          disabled={!others.some((topic) => topic.id === other)}
          onClick={() => {
            choose([...chosen, other]);
            setOther('');
          }}
        >
          {t('topicAddButton')}
        </button>
      </div>
    </fieldset>
  );
}
