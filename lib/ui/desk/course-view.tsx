import { useEffect, useRef, useState } from 'preact/hooks';
import { changeCourse, changeSettings, readSettings } from '#lib/store/actions/courses.ts';
import { useDeck } from '../deck/deck-context.tsx';
import { useAction } from '../deck/use-action.ts';
import type { Standing } from '../derive/next-up.ts';
import { Trouble } from '../parts/trouble.tsx';
import { t, tn } from '../text.ts';
import { useLive } from '../use-live.ts';
import { CourseFields, TargetFields } from './course-fields.tsx';
import { OpenPack } from './packs/open-pack.tsx';
import { SavePack } from './packs/save-pack.tsx';
import { linkTo } from './route.ts';
import { SiteList } from './sites.tsx';
import { StartCourse } from './start-course.tsx';

const ROUND_MINUTES = [1, 2, 3, 5, 10, 15, 20];

/** The course itself: its name, its exam day, the length of a round; and a further course. */
export function CourseView({ standing }: { standing: Standing }) {
  const { course } = standing.deck;
  return (
    <div class="stack">
      <h1>{t('pageCourse')}</h1>
      <ThisCourse key={course.id} standing={standing} />
      <p>
        <a href={linkTo('print')}>{t('printLink')}</a>
      </p>
      <OpenPack />
      <SavePack standing={standing} />
      <RoundLength />
      <SiteList />
      <StartCourse further />
      <p>
        <a href={linkTo('out')}>{t('outTitle')}</a>
      </p>
      <p>
        <a href={linkTo('aside')}>{t('asideTitle')}</a>
      </p>
    </div>
  );
}

function ThisCourse({ standing }: { standing: Standing }) {
  const db = useDeck();
  const action = useAction();
  const { course } = standing.deck;
  const { targetSides, targetQuestions } = course;
  const [name, setName] = useState(course.name);
  const [examDay, setExamDay] = useState(course.examDay);
  const [targets, setTargets] = useState({ targetSides, targetQuestions });
  const [saved, setSaved] = useState(false);
  const seen = useRef(course);
  useEffect(() => {
    if (seen.current.changedAt === course.changedAt) return;
    // A course pack, or another page, has changed it.
    seen.current = course;
    setName(course.name);
    setExamDay(course.examDay);
    setTargets({ targetSides: course.targetSides, targetQuestions: course.targetQuestions });
  }, [course]);
  return (
    <form
      class="sheet stack narrow"
      onInput={() => setSaved(false)}
      onSubmit={(event) => {
        event.preventDefault();
        void action
          .run(() => changeCourse(db, course.id, { name, examDay, ...targets }, Date.now()))
          .then(setSaved);
      }}
    >
      <h2>{t('courseThis')}</h2>
      <CourseFields name={name} examDay={examDay} setName={setName} setExamDay={setExamDay} />
      <TargetFields targets={targets} set={setTargets} />
      <Trouble text={action.trouble} />
      <div class="row">
        <button class="main" disabled={action.busy}>
          {t('save')}
        </button>
        <span role="status">{saved && t('saved')}</span>
      </div>
    </form>
  );
}

function RoundLength() {
  const db = useDeck();
  const action = useAction();
  const settings = useLive(() => readSettings(db), ['settings'], 'settings');
  if (settings.state !== 'ready') return null;
  return (
    <div class="sheet stack narrow">
      <div class="field">
        <label for="round-minutes">{t('roundMinutes')}</label>
        <select
          id="round-minutes"
          value={settings.value.roundMinutes}
          onChange={(event) => {
            const roundMinutes = Number(event.currentTarget.value);
            void action.run(() => changeSettings(db, { roundMinutes }));
          }}
        >
          {ROUND_MINUTES.map((minutes) => (
            <option key={minutes} value={minutes}>
              {tn('minutes', minutes)}
            </option>
          ))}
        </select>
      </div>
      <Trouble text={action.trouble} />
    </div>
  );
}
