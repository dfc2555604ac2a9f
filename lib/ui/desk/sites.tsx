import { useEffect, useState } from 'preact/hooks';
import { useAction } from '../deck/use-action.ts';
import { Trouble } from '../parts/trouble.tsx';
import { askForSite, giveUpSite, onSitesChange, siteOf, sitesGranted } from '../sites.ts';
import { t } from '../text.ts';

/** The sites granted now, followed as they change; null until they are read. */
function useSites(): string[] | null {
  const [sites, setSites] = useState<string[] | null>(null);
  useEffect(() => {
    const closing = new AbortController();
    const read = () => void sitesGranted().then((all) => !closing.signal.aborted && setSites(all));
    read();
    onSitesChange(read, closing.signal);
    return () => closing.abort();
  }, []);
  return sites;
}

const nameOf = (site: string) => site.replace(/^\*?[a-z]*:\/\//, '').replace(/\/\*$/, '');

/** Whether clips are always shown on the site of an address; a click asks the browser for it, or gives it back. */
export function SiteSwitch({ url }: { url: string }) {
  const action = useAction();
  const sites = useSites();
  const site = siteOf(url);
  if (site === null || sites === null) return null;
  const isGranted = sites.includes(site);
  const change = () => void action.run(() => (isGranted ? giveUpSite(site) : askForSite(site)));
  return (
    <>
      <label class="check">
        <input type="checkbox" checked={isGranted} disabled={action.busy} onChange={change} />
        {t('siteSwitch', nameOf(site))}
      </label>
      <Trouble text={action.trouble} />
    </>
  );
}

/** All sites on which clips are always shown, each with a way to give it back. */
export function SiteList() {
  const action = useAction();
  const sites = useSites();
  if (sites === null) return null;
  return (
    <section class="sheet stack narrow">
      <h2>{t('sitesTitle')}</h2>
      <p class="soft">{sites.length === 0 ? t('sitesNone') : t('sitesIntro')}</p>
      <ul class="items">
        {sites.map((site) => (
          <li key={site} class="row spread">
            {nameOf(site)}
            <button
              aria-label={t('siteStopNamed', nameOf(site))}
              onClick={() => void action.run(() => giveUpSite(site))}
            >
              {t('siteStop')}
            </button>
          </li>
        ))}
      </ul>
      <Trouble text={action.trouble} />
    </section>
  );
}
