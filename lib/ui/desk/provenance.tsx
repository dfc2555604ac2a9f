import { useLayoutEffect, useRef, useState } from 'preact/hooks';
import { dayInWords, referenceOf } from '#lib/exchange/reference.ts';
import type { Clip } from '#lib/model/clip.ts';
import { type Source, hasAddress } from '#lib/model/source.ts';
import { dayOf } from '../derive/days.ts';
import { rememberOpened } from '../opened.ts';
import { t } from '../text.ts';
import { SiteSwitch } from './sites.tsx';

/** Where a clip is from and on what terms, with a reference to copy. */
export function Provenance({ source, clip }: { source: Source; clip: Clip }) {
  const kept = dayOf(clip.createdAt);
  const parts = [source.author, source.site, source.published && dayInWords(source.published)];
  return (
    <section class="stack provenance" aria-label={t('provenance')}>
      <p class="wrap">
        <OutLink source={source} clip={clip} />
        {parts.filter(Boolean).map((part) => ` · ${part}`)}
        {source.licence && ' · '}
        {source.licence && (
          <a href={source.licence} target="_blank" rel="noreferrer noopener">
            {t('licence')}
          </a>
        )}
        {` · ${t('keptOn', dayInWords(kept))}`}
      </p>
      <CopyReference text={referenceOf(source, kept, words())} />
      <SiteSwitch url={source.url} />
      <p class="soft">{t('privateStudy')}</p>
    </section>
  );
}

const words = () => ({
  noDate: t('referenceNoDate'),
  availableAt: t('referenceAvailableAt'),
  accessed: t('referenceAccessed'),
});

/** A file on the student's device has no address to go to. */
function OutLink({ source, clip }: { source: Source; clip: Clip }) {
  const name = source.title || source.url;
  if (!hasAddress(source)) return <span>{name}</span>;
  return (
    <a
      href={source.url}
      target="_blank"
      rel="noreferrer noopener"
      onClick={() => void rememberOpened(source.url, clip.id)}
    >
      {name}
    </a>
  );
}

type Outcome = 'copied' | 'refused' | null;

function CopyReference({ text }: { text: string }) {
  const [outcome, setOutcome] = useState<Outcome>(null);
  const field = useRef<HTMLTextAreaElement>(null);
  const copy = () =>
    navigator.clipboard.writeText(text).then(
      () => setOutcome('copied'),
      () => setOutcome('refused'),
    );
  useLayoutEffect(() => {
    if (outcome === 'refused') field.current!.select();
  }, [outcome]);
  return (
    <>
      <div class="row">
        <button type="button" onClick={() => void copy()}>
          {t('referenceCopy')}
        </button>
        <span class="soft" role="status">
          {outcome === 'copied' && t('copied')}
          {outcome === 'refused' && t('referenceSelected')}
        </span>
      </div>
      {outcome === 'refused' && (
        <textarea ref={field} readOnly rows={3} aria-label={t('reference')} value={text} />
      )}
    </>
  );
}
