import { judgementOf } from '#lib/model/attempt.ts';
import type { Round } from '#lib/recall/round.ts';
import { summaryOf } from '#lib/recall/round-summary.ts';
import { useLayoutEffect, useRef } from 'preact/hooks';
import { Mark } from '../parts/mark.tsx';
import { Words } from '../parts/words.tsx';
import { t, tn } from '../text.ts';

interface RoundEndProps {
  round: Round;
  topicName(id: string): string;
  /** The address of a page of the desk. */
  deskLink(path: string): string;
  again(): void;
}

/** The end of a round: marks by topic, and what to reopen. */
export function RoundEnd({ round, topicName, deskLink, again }: RoundEndProps) {
  const heading = useRef<HTMLHeadingElement>(null);
  useLayoutEffect(() => heading.current!.focus(), []);
  const summary = summaryOf(round);
  return (
    <section class="stack round-end">
      <h2 ref={heading} tabIndex={-1}>
        {summary.count === 0 ? t('roundNothing') : t('roundMarks', summary.got, summary.outOf)}
      </h2>
      {summary.count > 0 && (
        <>
          <p class="soft">{tn('roundAsked', summary.count)}</p>
          <table class="marks-table">
            <caption class="unseen">{t('roundByTopic')}</caption>
            <tbody>
              {summary.topics.map((topic) => (
                <tr key={topic.topicId}>
                  <th scope="row">{topicName(topic.topicId)}</th>
                  <td>
                    <span class="row nowrap">
                      <Mark judgement={judgementOf({ marks: topic.got, outOf: topic.outOf })} />
                      {t('marksNofN', topic.got, topic.outOf)}
                    </span>
                  </td>
                </tr>
              ))}
            </tbody>
          </table>
        </>
      )}
      {summary.reopen.length > 0 && (
        <div class="field">
          <h3>{t('roundReopen')}</h3>
          <ul class="plain-list">
            {summary.reopen.map(({ item, clipId, got, outOf }) => (
              <li key={item.id}>
                <a
                  href={deskLink(clipId === null ? `topic/${item.topicId}` : `clip/${clipId}`)}
                  target={location.pathname.startsWith('/desk') ? undefined : '_blank'}
                >
                  <Words text={item.asks} />
                </a>{' '}
                <span class="soft">{t('marksNofN', got, outOf)}</span>
              </li>
            ))}
          </ul>
        </div>
      )}
      <div class="row">
        <button class="main" onClick={again}>
          {t('roundAnother')}
        </button>
      </div>
    </section>
  );
}
