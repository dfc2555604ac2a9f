import type { Gap, TopicCoverage } from '#lib/syllabus/coverage.ts';
import { changeSettings } from '#lib/store/actions/courses.ts';
import { useDeck } from '../../deck/deck-context.tsx';
import { useAction } from '../../deck/use-action.ts';
import type { Standing } from '../../derive/next-up.ts';
import { Trouble } from '../../parts/trouble.tsx';
import { t } from '../../text.ts';
import { linkTo } from '../route.ts';
import { ShortcutHint } from '../shortcut-hint.tsx';

type GapKind = Gap['kind'];

const LABELS = {
  'no-clip': 'gapNoClip',
  'not-understood': 'gapNotUnderstood',
  unclear: 'gapUnclear',
  'one-source': 'gapOneSource',
  'no-question': 'gapNoQuestion',
  'no-line': 'gapNoLine',
  'not-recalled': 'gapNotRecalled',
  'not-secured': 'gapNotSecured',
} as const satisfies Record<GapKind, string>;

/** Where in the desk a gap is closed; null where it is closed on a page outside. */
function placeOf(kind: GapKind, topicId: string, standing: Standing): string | null {
  const clips = standing.deck.clips.filter((clip) => clip.topicIds.includes(topicId));
  const wordless = clips.find((clip) => clip.ownWords.trim() === '');
  const unclear = clips.find((clip) => clip.unclear);
  switch (kind) {
    case 'no-clip':
    case 'one-source':
      return null;
    case 'not-understood':
      return `clip/${(wordless ?? unclear ?? clips[0])?.id}`;
    case 'unclear':
      return `clip/${unclear?.id}`;
    case 'no-question':
    case 'no-line':
      return clips[0] ? `clip/${clips[0].id}` : `topic/${topicId}`;
    case 'not-recalled':
    case 'not-secured':
      return `round/${topicId}`;
  }
}

interface GapActionsProps {
  row: TopicCoverage;
  /** The next clip is meant for this topic. */
  aimed: boolean;
  standing: Standing;
}

/** Each gap of a topic, as the action that closes it; the first one stands out. */
export function GapActions({ row, aimed, standing }: GapActionsProps) {
  const db = useDeck();
  const action = useAction();
  const aim = (topicId: string | null) =>
    void action.run(() => changeSettings(db, { aimedTopicId: topicId }));
  if (row.gaps.length === 0) return <p class="soft">{t('gapsNone')}</p>;
  return (
    <div class="gap-actions">
      {row.gaps.map(({ kind }, index) => {
        const place = placeOf(kind, row.topicId, standing);
        const look = index === 0 ? 'button' : 'further';
        return place === null ? (
          <button
            key={kind}
            class={index === 0 ? '' : 'plain'}
            aria-pressed={aimed}
            onClick={() => aim(aimed ? null : row.topicId)}
          >
            {t(LABELS[kind])}
          </button>
        ) : (
          <a key={kind} class={look} href={linkTo(place)}>
            {t(LABELS[kind])}
          </a>
        );
      })}
      {aimed && (
        <div class="remark" role="status">
          <p>{t('aimedHere')}</p>
          <ShortcutHint />
        </div>
      )}
      <Trouble text={action.trouble} />
    </div>
  );
}
