import { useMemo } from 'preact/hooks';
import type { Judgement } from '#lib/model/attempt.ts';
import { type StatementEvidence, statementEvidence } from '#lib/syllabus/statement-evidence.ts';
import type { Standing } from '../derive/next-up.ts';
import { Mark } from '../parts/mark.tsx';
import { t } from '../text.ts';
import { judge } from './coverage/evidence-list.tsx';
import { statementsOf } from './statement-ticks.tsx';

/** What the syllabus asks in a topic, each statement marked by what answers it. */
export function TopicAsks({ standing: { deck, progress }, id }: { standing: Standing; id: string }) {
  const evidence = useMemo(
    () => statementEvidence(deck.statements, { ...deck, ...progress }),
    [deck, progress],
  );
  const statements = statementsOf(deck.statements, id);
  if (statements.length === 0) return <p class="soft">{t('topicNoStatements')}</p>;
  return (
    <ul class="plain-list topic-asks">
      {statements.map(({ id: key, code, text }) => (
        <li key={key}>
          <p>
            {code && <span class="soft">{code} </span>}
            {text}
          </p>
          <Marks evidence={evidence.get(key)!} />
        </li>
      ))}
    </ul>
  );
}

function Marks({ evidence }: { evidence: StatementEvidence }) {
  const { clips, understood, items, attempted, secured } = evidence;
  const marks: [Judgement, string][] = [
    [understood > 0 ? 'full' : judge(clips, clips + 1), t('statementExplained', clips)],
    [judge(items, 1), t('statementAsked', items)],
    [judge(attempted, items), t('evidenceAttempted', attempted, items)],
    [judge(secured, items), t('evidenceSecured', secured, items)],
  ];
  return (
    <ul class="evidence">
      {(items === 0 ? marks.slice(0, 2) : marks).map(([judgement, text]) => (
        <li key={text}>
          <Mark judgement={judgement} /> {text}
          <span class="unseen">
            {judgement === 'full' ? '' : ` (${t(judgement === 'part' ? 'partThere' : 'missing')})`}
          </span>
        </li>
      ))}
    </ul>
  );
}
