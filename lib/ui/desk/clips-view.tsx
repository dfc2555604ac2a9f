import { useMemo, useState } from 'preact/hooks';
import type { Clip } from '#lib/model/clip.ts';
import type { Standing } from '../derive/next-up.ts';
import { siteName } from '../parts/site-name.ts';
import { topicNames } from '../parts/topic-name.ts';
import { Words } from '../parts/words.tsx';
import { t, tn } from '../text.ts';
import { ShortcutHint } from './shortcut-hint.tsx';
import { linkTo } from './route.ts';

const FILTERS = ['all', 'unclear', 'untagged', 'wordless'] as const;
type Filter = (typeof FILTERS)[number];

const PASSES: Record<Filter, (clip: Clip) => boolean> = {
  all: () => true,
  unclear: (clip) => clip.unclear,
  untagged: (clip) => clip.topicIds.length === 0,
  wordless: (clip) => clip.ownWords.trim() === '',
};

/** Everything kept, newest first. */
export function ClipsView({ standing }: { standing: Standing }) {
  const { clips, sources, topics, questions, lines } = standing.deck;
  const [filter, setFilter] = useState<Filter>('all');
  const names = useMemo(() => topicNames(topics), [topics]);
  const sourceOf = useMemo(() => new Map(sources.map((source) => [source.id, source])), [sources]);
  const written = useMemo(
    () => Map.groupBy([...questions, ...lines], (item) => item.clipId),
    [questions, lines],
  );
  const shown = clips.filter(PASSES[filter]).sort((a, b) => b.createdAt - a.createdAt);
  return (
    <div class="stack">
      <div class="row apart">
        <h1>{t('pageClips')}</h1>
        <a class="button" href={linkTo('own')}>
          {t('ownAdd')}
        </a>
      </div>
      {clips.length === 0 ? (
        <div class="sheet stack narrow">
          <p>{t('clipsNone')}</p>
          <ShortcutHint />
        </div>
      ) : (
        <div class="row" role="group" aria-label={t('clipsWhich')}>
          {FILTERS.map((one) => (
            <button key={one} aria-pressed={filter === one} onClick={() => setFilter(one)}>
              {t(
                `clips${one[0]!.toUpperCase()}${one.slice(1)}` as 'clipsAll',
                clips.filter(PASSES[one]).length,
              )}
            </button>
          ))}
        </div>
      )}
      <ul class="cards">
        {shown.map((clip) => (
          <li key={clip.id} class="sheet stack">
            <a class="excerpt" href={linkTo(`clip/${clip.id}`)}>
              {clip.text.slice(0, 240) || t('clipPicture')}
            </a>
            {clip.ownWords !== '' && (
              <p class="own wrap">
                <Words text={clip.ownWords} />
              </p>
            )}
            <p class="soft">
              {[
                clip.topicIds.map(names).join(', ') || t('clipUntagged'),
                siteName(sourceOf.get(clip.sourceId)),
                tn('itemsFrom', written.get(clip.id)?.length ?? 0),
                clip.unclear ? t('unclear') : '',
              ]
                .filter(Boolean)
                .join(' · ')}
            </p>
          </li>
        ))}
      </ul>
    </div>
  );
}
