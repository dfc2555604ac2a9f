import { useEffect, useRef, useState } from 'preact/hooks';
import type { Course } from '#lib/model/course.ts';
import type { Settings } from '#lib/model/settings.ts';
import { changeSettings, readSettings } from '#lib/store/actions/courses.ts';
import { keepForGood } from '#lib/store/persist.ts';
import { readAll } from '#lib/store/read.ts';
import { readSetAside } from '#lib/store/set-aside.ts';
import { useDeck } from '../deck/deck-context.tsx';
import { useAction } from '../deck/use-action.ts';
import { Trouble } from '../parts/trouble.tsx';
import { pdfPageLink } from '../pdf/pdf-link.ts';
import { t, tell, tn } from '../text.ts';
import { takeTrouble } from '../trouble.ts';
import { SearchHolder } from '../search/search-holder.tsx';
import { useLive } from '../use-live.ts';
import { CoursePages } from './course-pages.tsx';
import { OpenPack } from './packs/open-pack.tsx';
import { NotesPages, isNotesRoute } from './notes/notes-pages.tsx';
import { linkTo, type Route, useRoute } from './route.ts';
import { SetAsideView } from './set-aside-view.tsx';
import { StartCourse } from './start-course.tsx';
import { UndoBar } from './undo-bar.tsx';

const PAGES = ['coverage', 'lessons', 'clips', 'notes', 'search', 'round', 'syllabus', 'course'] as const;

/** The page of the margin that another belongs to. */
const PAGE_OF: Partial<Record<Route['view'], (typeof PAGES)[number]>> = {
  clip: 'clips',
  topic: 'coverage',
  checklist: 'coverage',
  report: 'coverage',
  read: 'notes',
  condense: 'notes',
  print: 'notes',
  own: 'clips',
  out: 'course',
};

/** The full-page view. */
export function Desk() {
  const db = useDeck();
  const route = useRoute();
  const trouble = useStartTrouble();
  const frame = useLive(
    async () => {
      const [settings, courses, aside] = await Promise.all([
        readSettings(db),
        readAll(db, 'courses'),
        readSetAside(db),
      ]);
      return { settings, courses, unreadable: aside.filter(({ why }) => why === 'unreadable').length };
    },
    ['settings', 'courses', 'setAside'],
    'frame',
  );
  if (frame.state === 'loading') return null;
  if (frame.state === 'failed') return <Trouble text={tell(frame.error)} />;
  const { settings, courses, unreadable } = frame.value;
  const course = courses.find(({ id }) => id === settings.courseId);
  return (
    <div class="desk">
      <a class="skip" href="#page" onClick={focusPage}>
        {t('skipToPage')}
      </a>
      <Margin route={route} courses={courses} course={course} settings={settings} />
      <main id="page" tabIndex={-1}>
        <Trouble text={trouble} />
        {unreadable > 0 && route.view !== 'aside' && (
          <p class="trouble">
            {tn('asideCount', unreadable)} <a href={linkTo('aside')}>{t('asideLook')}</a>
          </p>
        )}
        <Page route={route} course={course} />
      </main>
      <UndoBar />
    </div>
  );
}

function focusPage(event: Event): void {
  // The address after # names a page of the desk, so the jump is made by hand.
  event.preventDefault();
  document.getElementById('page')!.focus();
}

/** What could not be told elsewhere. The browser is asked to keep the deck for good. */
function useStartTrouble(): string | null {
  const [trouble, setTrouble] = useState<string | null>(null);
  useEffect(() => {
    void takeTrouble().then((text) => text !== null && setTrouble(text));
    void keepForGood(navigator.storage);
  }, []);
  return trouble;
}

function Page({ route, course }: { route: Route; course: Course | undefined }) {
  const place = JSON.stringify(route);
  const first = useRef(true);
  useEffect(() => {
    const isFirst = first.current;
    first.current = false;
    // At an item of it, which takes the focus itself.
    if ('itemId' in route) return;
    // A page that is reached by a link is read from its top; the search waits for words.
    const field = document.getElementById('search-field');
    if (!isFirst || field) (field ?? document.getElementById('page')!).focus({ preventScroll: true });
    scrollTo(0, 0);
    // eslint-disable-next-line react-hooks/exhaustive-deps -- `place` is the route
  }, [place]);
  if (route.view === 'aside') return <SetAsideView />;
  if (!course)
    return (
      <div class="stack">
        <StartCourse />
        <OpenPack />
      </div>
    );
  return (
    <SearchHolder>
      {isNotesRoute(route) ? (
        <NotesPages key={course.id} courseId={course.id} route={route} />
      ) : (
        <CoursePages key={course.id} courseId={course.id} route={route} />
      )}
    </SearchHolder>
  );
}

interface MarginProps {
  route: Route;
  courses: Course[];
  course: Course | undefined;
  settings: Settings;
}

/** The margin of the page: which course, and where to go. */
function Margin({ route, courses, course }: MarginProps) {
  const db = useDeck();
  const action = useAction();
  const here = PAGE_OF[route.view] ?? route.view;
  return (
    <header class="margin">
      <p class="name">
        <img src="/icon/48.png" width="28" height="28" alt="" /> {t('extName')}
      </p>
      {courses.length > 1 && course && (
        <div class="field">
          <label for="course-choice" class="unseen">
            {t('course')}
          </label>
          <select
            id="course-choice"
            value={course.id}
            onChange={(event) => {
              const courseId = event.currentTarget.value;
              void action.run(() => changeSettings(db, { courseId, aimedTopicId: null }));
            }}
          >
            {courses.map(({ id, name }) => (
              <option key={id} value={id}>
                {name}
              </option>
            ))}
          </select>
        </div>
      )}
      {courses.length === 1 && course && <p class="course-name">{course.name}</p>}
      {course && (
        <nav aria-label={t('deskPages')}>
          <ul>
            {PAGES.map((page) => (
              <li key={page}>
                <a href={linkTo(page)} aria-current={here === page ? 'page' : undefined}>
                  {t(`page${page[0]!.toUpperCase()}${page.slice(1)}` as 'pageCoverage')}
                </a>
              </li>
            ))}
          </ul>
        </nav>
      )}
      {course && (
        <p>
          <a href={pdfPageLink()}>{t('pdfOpen')}</a>
        </p>
      )}
      <Trouble text={action.trouble} />
    </header>
  );
}
