import { fileName } from '#lib/exchange/file-name.ts';
import { packOfCourse } from '#lib/store/actions/packs.ts';
import { activeTopics } from '#lib/syllabus/tree.ts';
import { useState } from 'preact/hooks';
import { useDeck } from '../../deck/deck-context.tsx';
import { useAction } from '../../deck/use-action.ts';
import type { Standing } from '../../derive/next-up.ts';
import { Trouble } from '../../parts/trouble.tsx';
import { t } from '../../text.ts';
import { downloadText } from '../download.ts';

/** Saves the course as a file that a teacher hands to a class. */
export function SavePack({ standing: { deck } }: { standing: Standing }) {
  const db = useDeck();
  const action = useAction();
  const [saved, setSaved] = useState<string | null>(null);
  const { course, topics, statements, questions, lessons } = deck;
  const count = activeTopics(topics).length;
  const save = async () => {
    const pack = await packOfCourse(db, course.id, Date.now());
    const name = fileName(pack.course.name, t('packFile'), 'json');
    downloadText(name, 'application/json', JSON.stringify(pack, null, 1));
    setSaved(name);
  };
  return (
    <section class="sheet stack narrow" aria-labelledby="pack-save">
      <h2 id="pack-save">{t('packSaveTitle')}</h2>
      <p>{t('packSaveHow')}</p>
      <p class="soft">
        {t('packSaveHolds', count, statements.length, questions.length, lessons.length)}{' '}
        {t('packSaveWithout')}
      </p>
      <Trouble text={action.trouble} />
      <div class="row">
        <button disabled={action.busy || count === 0} onClick={() => void action.run(save)}>
          {t('packSave')}
        </button>
        <span role="status">{saved !== null && t('fileSaved', saved)}</span>
      </div>
      {count === 0 && <p class="soft">{t('packSaveEmpty')}</p>}
    </section>
  );
}
