import { useState } from 'preact/hooks';
import { linkBack } from '#lib/capture/links/link-back.ts';
import { parseTextFragment } from '#lib/capture/links/text-fragment.ts';
import { dayInWords, referenceOf } from '#lib/exchange/reference.ts';
import type { Clip } from '#lib/model/clip.ts';
import { type Source, hasAddress } from '#lib/model/source.ts';
import { dayOf } from '../derive/days.ts';
import { rememberOpened } from '../opened.ts';
import { CopyText } from '../parts/copy-text.tsx';
import { t } from '../text.ts';
import { SiteSwitch } from './sites.tsx';

/** Where a clip is from and on what terms, with a reference to copy. */
export function Provenance({ source, clip }: { source: Source; clip: Clip }) {
  const kept = dayOf(clip.createdAt);
  if (source.kind === 'own') return <OwnProvenance source={source} />;
  return <OutProvenance source={source} clip={clip} kept={kept} />;
}

/** The student's own notes lead nowhere, and nobody else's terms apply to them. */
function OwnProvenance({ source }: { source: Source }) {
  return (
    <section class="provenance" aria-label={t('provenance')}>
      <p class="wrap">
        {[source.title, t('ownNotesOf', dayInWords(dayOf(source.createdAt)))].filter(Boolean).join(' · ')}
      </p>
    </section>
  );
}

function OutProvenance({ source, clip, kept }: { source: Source; clip: Clip; kept: string }) {
  const parts = [source.author, source.site, source.published && dayInWords(source.published)];
  const [isOpened, setOpened] = useState(false);
  const link = linkBack({ url: source.url, selectors: clip.selectors });
  const open = () => {
    void rememberOpened(source.url, clip.id);
    setOpened(true);
  };
  return (
    <section class="stack provenance" aria-label={t('provenance')}>
      <p class="wrap">
        <OutLink source={source} link={link} open={open} />
        {parts.filter(Boolean).map((part) => ` · ${part}`)}
        {source.licence && ' · '}
        {source.licence && (
          <a href={source.licence} target="_blank" rel="noreferrer noopener">
            {t('licence')}
          </a>
        )}
        {` · ${t('keptOn', dayInWords(kept))}`}
      </p>
      {/* On a site that is not granted, nothing can look whether the passage is still there. */}
      {isOpened && leadsByWords(link) && <p class="soft">{t('passageOpened')}</p>}
      <CopyText
        text={referenceOf(source, kept, words())}
        button={t('referenceCopy')}
        label={t('reference')}
        selected={t('referenceSelected')}
      />
      <SiteSwitch url={source.url} />
      <p class="soft">{t('privateStudy')}</p>
    </section>
  );
}

const leadsByWords = (link: string): boolean => parseTextFragment(link).length > 0;

const words = () => ({
  noDate: t('referenceNoDate'),
  availableAt: t('referenceAvailableAt'),
  accessed: t('referenceAccessed'),
});

/** To the clip's own place in its source. A file on the student's device has no address to go to. */
function OutLink({ source, link, open }: { source: Source; link: string; open(): void }) {
  const name = source.title || source.url;
  if (!hasAddress(source)) return <span>{name}</span>;
  return (
    <a href={link} target="_blank" rel="noreferrer noopener" onClick={open}>
      {name}
    </a>
  );
}
