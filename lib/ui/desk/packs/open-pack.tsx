import { useCallback, useEffect, useRef, useState } from 'preact/hooks';
import { type PackLook, lookAtPack, takePack } from '#lib/store/actions/packs.ts';
import { useDeck } from '../../deck/deck-context.tsx';
import { useAction } from '../../deck/use-action.ts';
import { Trouble } from '../../parts/trouble.tsx';
import { useDrop } from '../../pdf/use-drop.ts';
import { t } from '../../text.ts';
import { linkTo } from '../route.ts';
import { PackPreview } from './pack-preview.tsx';
import { readPackFile } from './read-pack-file.ts';

/** Opens a course pack, picked or dropped on the page: what it changes is shown before it is taken in. */
export function OpenPack() {
  const db = useDeck();
  const action = useAction();
  const [look, setLook] = useState<PackLook | null>(null);
  const [taken, setTaken] = useState(false);
  const { run } = action;
  const open = useCallback(
    (file: File) => {
      setTaken(false);
      setLook(null);
      void run(async () => setLook(await lookAtPack(db, await readPackFile(file), Date.now())));
    },
    [db, run],
  );
  const isOver = useDrop(open);
  const take = async ({ pack, deck }: PackLook) => {
    if (!(await action.run(() => takePack(db, pack, Date.now())))) return;
    setLook(null);
    setTaken(true);
    if (!deck) location.hash = linkTo('coverage');
  };
  return (
    <section
      class={isOver ? 'sheet stack narrow drop-over' : 'sheet stack narrow'}
      aria-labelledby="pack-open"
    >
      <h2 id="pack-open">{t('packOpenTitle')}</h2>
      <p>{t('packOpenHow')}</p>
      <div class="row">
        <PackFile open={open} />
        <span class="soft">{t('packDrop')}</span>
      </div>
      <Trouble text={action.trouble} />
      <p role="status" class={taken ? 'remark' : 'unseen'}>
        {taken && t('packTaken')}
      </p>
      {look && <Preview look={look} take={take} leave={() => setLook(null)} busy={action.busy} />}
    </section>
  );
}

function PackFile({ open }: { open(file: File): void }) {
  return (
    <span class="field file">
      <label for="pack-file" class="button">
        {t('packOpen')}
      </label>
      <input
        id="pack-file"
        class="unseen"
        type="file"
        accept=".json,application/json"
        onChange={(event) => {
          const field = event.currentTarget;
          const file = field.files?.[0];
          if (file) open(file);
          // The same file may be opened again.
          field.value = '';
        }}
      />
    </span>
  );
}

interface PreviewProps {
  look: PackLook;
  take(look: PackLook): Promise<void>;
  leave(): void;
  busy: boolean;
}

function Preview({ look, take, leave, busy }: PreviewProps) {
  const area = useRef<HTMLDivElement>(null);
  useEffect(() => area.current!.focus(), []);
  return (
    <div class="stack" ref={area} tabIndex={-1} role="group" aria-label={t('packLook')}>
      <PackPreview look={look} />
      <div class="row">
        <button class="main" disabled={busy} onClick={() => void take(look)}>
          {t('packTake')}
        </button>
        <button onClick={leave}>{t('leaveAsItWas')}</button>
      </div>
    </div>
  );
}
