import type { Gap, TopicCoverage } from '#lib/syllabus/coverage.ts';
import type { Clip } from '#lib/model/clip.ts';
import { isOwn } from '#lib/notes/copied.ts';
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
  'lesson-missing': 'gapLessonMissing',
  'not-understood': 'gapNotUnderstood',
  unclear: 'gapUnclear',
  'one-source': 'gapOneSource',
  'statement-unticked': 'gapStatementUnticked',
  'statement-unexplained': 'gapStatementUnexplained',
  'no-question': 'gapNoQuestion',
  'no-line': 'gapNoLine',
  'statement-unasked': 'gapStatementUnasked',
  'not-recalled': 'gapNotRecalled',
  'not-secured': 'gapNotSecured',
} as const satisfies Record<GapKind, string>;

type Place = (clips: Clip[], topicId: string, standing: Standing) => string;

const atFirst: Place = ([clip], topicId) => (clip ? `clip/${clip.id}` : `topic/${topicId}`);
const atRound: Place = (_clips, topicId) => `round/${topicId}`;

/** Where in the desk a gap is closed; null where it is closed on a page outside. */
const PLACES: Record<GapKind, Place | null> = {
  'no-clip': null,
  'one-source': null,
  'statement-unexplained': null,
  'lesson-missing': () => 'lessons',
  'not-understood': (clips) => {
    const wordless = clips.find((clip) => !isOwn(clip.text, clip.ownWords));
    return `clip/${(wordless ?? unclearOne(clips) ?? clips[0])?.id}`;
  },
  unclear: (clips, topicId) => {
    const clip = unclearOne(clips);
    return clip ? `clip/${clip.id}` : `read/${topicId}`;
  },
  'statement-unticked': (clips, topicId, standing) => `clip/${unticked(clips, topicId, standing)?.id}`,
  'statement-unasked': (_clips, topicId) => `topic/${topicId}`,
  'no-question': atFirst,
  'no-line': atFirst,
  'not-recalled': atRound,
  'not-secured': atRound,
};

const unclearOne = (clips: Clip[]): Clip | undefined => clips.find((clip) => clip.unclear);

/** The first clip that says of none of the topic's statements that it explains it. */
function unticked(clips: Clip[], topicId: string, { deck }: Standing): Clip | undefined {
  const here = new Set(deck.statements.filter((one) => one.topicId === topicId).map(({ id }) => id));
  return clips.find(({ statementIds }) => !statementIds.some((id) => here.has(id)));
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
  const clips = standing.deck.clips.filter((clip) => clip.topicIds.includes(row.topicId));
  const firstAim = row.gaps.find(({ kind }) => PLACES[kind] === null);
  // One button aims; a second would say and do the same.
  const gaps = row.gaps.filter((gap) => PLACES[gap.kind] !== null || gap === firstAim);
  if (row.gaps.length === 0) return <p class="soft">{t('gapsNone')}</p>;
  return (
    <div class="gap-actions">
      {gaps.map(({ kind }, index) => {
        const place = PLACES[kind]?.(clips, row.topicId, standing) ?? null;
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
