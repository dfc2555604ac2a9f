import { useState } from 'preact/hooks';
import { startCourse } from '#lib/store/actions/courses.ts';
import { useDeck } from '../deck/deck-context.tsx';
import { useAction } from '../deck/use-action.ts';
import { Trouble } from '../parts/trouble.tsx';
import { t } from '../text.ts';
import { CourseFields } from './course-fields.tsx';
import { linkTo } from './route.ts';

/** A first page: what the tool is for, and the course to begin with. */
export function StartCourse({ further = false }: { further?: boolean }) {
  const db = useDeck();
  const action = useAction();
  const [name, setName] = useState('');
  const [examDay, setExamDay] = useState<string | null>(null);
  return (
    <form
      class="sheet stack narrow"
      onSubmit={(event) => {
        event.preventDefault();
        void action
          .run(() => startCourse(db, { name, examDay }, Date.now()))
          .then((done) => {
            if (done) location.hash = linkTo('syllabus');
          });
      }}
    >
      {further ? <h2>{t('courseAnother')}</h2> : <h1>{t('startTitle')}</h1>}
      {!further && <p>{t('startIntro')}</p>}
      <CourseFields name={name} examDay={examDay} setName={setName} setExamDay={setExamDay} />
      <Trouble text={action.trouble} />
      <div>
        <button class="main" disabled={action.busy}>
          {t('startButton')}
        </button>
      </div>
      {!further && <p class="soft">{t('privacyLine')}</p>}
    </form>
  );
}
