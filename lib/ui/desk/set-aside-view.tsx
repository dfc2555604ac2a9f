import { putBack, readSetAside, type KeptAside } from '#lib/store/set-aside.ts';
import { StudentError } from '#lib/model/student-error.ts';
import { useDeck } from '../deck/deck-context.tsx';
import { useAction } from '../deck/use-action.ts';
import { Trouble } from '../parts/trouble.tsx';
import { t, tell } from '../text.ts';
import { useLive } from '../use-live.ts';
import { linkTo } from './route.ts';

/** The text by which a student knows a row again, whatever is in it. */
function nameOf(row: unknown): string {
  if (typeof row !== 'object' || row === null) return String(row);
  const texts = ['prompt', 'lead', 'text', 'title', 'name'].map(
    (field) => (row as Record<string, unknown>)[field],
  );
  const text = texts.find((value) => typeof value === 'string') ?? JSON.stringify(row);
  return String(text).slice(0, 200);
}

/** What was deleted, and what could not be read: nothing of it is lost. */
export function SetAsideView() {
  const db = useDeck();
  const live = useLive(() => readSetAside(db), ['setAside'], 'aside');
  if (live.state === 'loading') return null;
  if (live.state === 'failed') return <Trouble text={tell(live.error)} />;
  return (
    <div class="stack">
      <h1>{t('asideTitle')}</h1>
      <p>{live.value.length === 0 ? t('asideNone') : t('asideIntro')}</p>
      <ul class="cards">
        {live.value.map((aside) => (
          <AsideRow key={aside.key} aside={aside} />
        ))}
      </ul>
      <p>
        <a href={linkTo('coverage')}>{t('backToCoverage')}</a>
      </p>
    </div>
  );
}

function AsideRow({ aside }: { aside: KeptAside }) {
  const db = useDeck();
  const action = useAction();
  const back = () =>
    action.run(async () => {
      if (!(await putBack(db, aside.key))) throw new StudentError('errorStillUnreadable');
    });
  return (
    <li class="sheet stack">
      <p class="wrap">{nameOf(aside.row)}</p>
      <p class="soft">
        {aside.why === 'deleted' ? t('asideDeleted') : t('asideUnreadable', aside.store)} ·{' '}
        {new Date(aside.at).toLocaleString()}
      </p>
      {aside.why === 'unreadable' && (
        <details class="soft">
          <summary>{t('asideDetails')}</summary>
          <pre class="wrap">{`${aside.problem}\n\n${JSON.stringify(aside.row, null, 2)}`}</pre>
        </details>
      )}
      <Trouble text={action.trouble} />
      <div>
        <button disabled={action.busy} onClick={() => void back()}>
          {t('putBack')}
        </button>
      </div>
    </li>
  );
}
