import { useState } from 'preact/hooks';
import type { SlipState, SlipTopic } from '#lib/model/message.ts';
import { t, tn } from '../text.ts';

const MOST_FOUND = 6;

const nameOf = (topic: SlipTopic) => `${topic.code} ${topic.title}`.trim();

/** Topics whose code or title has every word that was typed. */
function find(topics: SlipTopic[], typed: string): SlipTopic[] {
  const words = typed.toLowerCase().split(/\s+/).filter(Boolean);
  if (words.length === 0) return [];
  return topics.filter((topic) => words.every((word) => nameOf(topic).toLowerCase().includes(word)));
}

interface TopicsProps {
  state: SlipState;
  chosen: string[];
  choose(topicIds: string[]): void;
}

/** The topics a clip may go under: those suggested with the words that decided, and a search for any other. */
export function Topics({ state, chosen, choose }: TopicsProps) {
  const [typed, setTyped] = useState('');
  // Chosen once, a topic stays in the list, ticked or not, so that a tick can be taken back.
  const [extra, setExtra] = useState<string[]>(() => chosen);
  const byId = new Map(state.topics.map((topic) => [topic.id, topic]));
  const suggested = new Map(state.suggestions.map((suggestion) => [suggestion.topicId, suggestion]));
  const listed = [...new Set([...extra, ...suggested.keys()])].flatMap((id) => byId.get(id) ?? []);
  const found = find(state.topics, typed).filter((topic) => !listed.includes(topic));
  const reasonOf = (id: string) => {
    if (id === state.aimedTopicId) return t('slipAimed');
    const suggestion = suggested.get(id);
    if (!suggestion) return '';
    const { terms, chance } = suggestion;
    const likely = Math.round(100 * chance);
    if (terms.length > 0) return t('slipBecause', terms.join(', '), likely);
    return chance > 0 ? t('slipLikely', likely) : '';
  };
  const add = (topic: SlipTopic) => {
    setExtra([...extra, topic.id]);
    choose([...chosen, topic.id]);
    setTyped('');
  };
  return (
    <fieldset class="field topics">
      <legend>{t('topic')}</legend>
      {state.offSyllabus && !state.kept && <p class="remark">{t('slipOffSyllabus', state.courseName)}</p>}
      {listed.map((topic) => (
        <label class="check" key={topic.id}>
          <input
            type="checkbox"
            checked={chosen.includes(topic.id)}
            onChange={(event) =>
              choose(
                event.currentTarget.checked ? [...chosen, topic.id] : chosen.filter((id) => id !== topic.id),
              )
            }
          />
          <span>
            {nameOf(topic)} <span class="soft">{reasonOf(topic.id)}</span>
          </span>
        </label>
      ))}
      <label class="unseen" for="other-topic">
        {t('slipOtherTopic')}
      </label>
      <input
        id="other-topic"
        type="search"
        autocomplete="off"
        placeholder={t('slipOtherTopic')}
        value={typed}
        onInput={(event) => setTyped(event.currentTarget.value)}
        onKeyDown={(event) => {
          if (event.key === 'Enter' && found[0]) add(found[0]);
        }}
      />
      {found.length > 0 && (
        <ul class="found">
          {found.slice(0, MOST_FOUND).map((topic) => (
            <li key={topic.id}>
              <button type="button" class="plain" onClick={() => add(topic)}>
                {nameOf(topic)}
              </button>
            </li>
          ))}
        </ul>
      )}
      <p class="unseen" role="status">
        {typed !== '' && (found.length > 0 ? tn('slipFound', found.length) : t('slipNoneFound'))}
      </p>
    </fieldset>
  );
}
