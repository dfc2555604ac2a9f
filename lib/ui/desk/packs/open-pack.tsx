import type { ComponentChildren } from 'preact';
import { useCallback, useEffect, useRef, useState } from 'preact/hooks';
import type { CoursePack } from '#lib/exchange/course-pack.ts';
import type { Course } from '#lib/model/course.ts';
import { type PackLook, lookAtPack, takePack } from '#lib/store/actions/packs.ts';
import { readAll } from '#lib/store/read.ts';
import type { Db } from '#lib/store/schema.ts';
import { useDeck } from '../../deck/deck-context.tsx';
import { useAction } from '../../deck/use-action.ts';
import { FileButton } from '../../parts/file-button.tsx';
import { Trouble } from '../../parts/trouble.tsx';
import { useDrop } from '../../pdf/use-drop.ts';
import { t } from '../../text.ts';
import { linkTo } from '../route.ts';
import { PackPreview } from './pack-preview.tsx';
import { readPackFile } from './read-pack-file.ts';

/** What taking a pack in would do, and what else could be done with it. */
interface Looked extends PackLook {
  file: CoursePack;
  /** The course that it would be taken into, though that was begun without it; null for the pack's own. */
  into: string | null;
  /** Courses that it could be taken into: those that follow no pack; none where one follows this pack already. */
  courses: Course[];
}

async function lookAt(db: Db, file: CoursePack, into: string | null = null): Promise<Looked> {
  const look = await lookAtPack(db, file, Date.now(), into);
  const isFollowed = look.deck !== null && into === null;
  const [courses, packs] = await Promise.all([readAll(db, 'courses'), readAll(db, 'packs')]);
  const following = new Set(packs.map(({ courseId }) => courseId));
  return { ...look, file, into, courses: isFollowed ? [] : courses.filter(({ id }) => !following.has(id)) };
}

/** Opens a course pack, picked or dropped on the page: what it changes is shown before it is taken in. */
export function OpenPack() {
  const db = useDeck();
  const action = useAction();
  const [look, setLook] = useState<Looked | null>(null);
  const [taken, setTaken] = useState(false);
  const { run } = action;
  const open = useCallback(
    (file: File) => {
      setTaken(false);
      setLook(null);
      void run(async () => setLook(await lookAt(db, await readPackFile(file))));
    },
    [db, run],
  );
  const isOver = useDrop(open);
  const take = async (looked: Looked) => {
    if (!(await action.run(() => takePack(db, looked, Date.now())))) return;
    setLook(null);
    setTaken(true);
    if (!looked.deck) location.hash = linkTo('coverage');
  };
  return (
    <section
      class={isOver ? 'sheet stack narrow drop-over' : 'sheet stack narrow'}
      aria-labelledby="pack-open"
    >
      <h2 id="pack-open">{t('packOpenTitle')}</h2>
      <p>{t('packOpenHow')}</p>
      <div class="row">
        <FileButton
          id="pack-file"
          label={t('packOpen')}
          accept=".json,application/json"
          open={([file]) => open(file!)}
        />
        <span class="soft">{t('packDrop')}</span>
      </div>
      <Trouble text={action.trouble} />
      <p role="status" class={taken ? 'remark' : 'unseen'}>
        {taken && t('packTaken')}
      </p>
      {look && (
        <Preview look={look} take={take} leave={() => setLook(null)} busy={action.busy}>
          <Into
            look={look}
            choose={(into) => void run(async () => setLook(await lookAt(db, look.file, into)))}
          />
        </Preview>
      )}
    </section>
  );
}

/** A student may have begun the course before the pack came: it may join that one. */
function Into({ look, choose }: { look: Looked; choose(courseId: string | null): void }) {
  if (look.courses.length === 0) return null;
  return (
    <div class="field">
      <label for="pack-into">{t('packInto')}</label>
      <select
        id="pack-into"
        value={look.into ?? ''}
        onChange={(event) => choose(event.currentTarget.value || null)}
      >
        <option value="">{t('packIntoNew')}</option>
        {look.courses.map(({ id, name }) => (
          <option key={id} value={id}>
            {t('packIntoCourse', name)}
          </option>
        ))}
      </select>
    </div>
  );
}

interface PreviewProps {
  look: Looked;
  children: ComponentChildren;
  take(look: Looked): Promise<void>;
  leave(): void;
  busy: boolean;
}

function Preview({ look, children, take, leave, busy }: PreviewProps) {
  const area = useRef<HTMLDivElement>(null);
  useEffect(() => area.current!.focus(), []);
  return (
    <div class="stack" ref={area} tabIndex={-1} role="group" aria-label={t('packLook')}>
      {children}
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
