import type { Change } from '#lib/store/changes.ts';
import type { StoreName } from '#lib/store/schema.ts';
import { useDeck } from '../deck/deck-context.tsx';
import { readStanding, type Standing, standingAfter } from '../derive/next-up.ts';
import { later } from '../parts/later.tsx';
import { Trouble } from '../parts/trouble.tsx';
import { SearchView } from '../search/search-view.tsx';
import { t, tell } from '../text.ts';
import { AtItem } from './at-item.tsx';
import { useLive } from '../use-live.ts';
import { ClipView } from './clip-view.tsx';
import { ClipsView } from './clips-view.tsx';
import { CourseView } from './course-view.tsx';
import { ChecklistView } from './coverage/checklist-view.tsx';
import { CoverageView } from './coverage/coverage-view.tsx';
import { LessonsView } from './lessons/lessons-view.tsx';
import { PrintView } from './print/print-view.tsx';
import { ReportView } from './report/report-view.tsx';
import { RoundView } from './round-view.tsx';
import type { Route } from './route.ts';
import { SyllabusView } from './syllabus/syllabus-view.tsx';
import { TopicView } from './topic-view.tsx';

const OutView = later(async () => (await import('./out/out-view.tsx')).OutView);
const OwnView = later(async () => (await import('./own/own-view.tsx')).OwnView);

/** Stores that a course's standing is read from. */
const READ: StoreName[] = [
  'courses',
  'topics',
  'statements',
  'clips',
  'sources',
  'questions',
  'lines',
  'lessons',
  'attempts',
];

/** A round writes an attempt every few seconds: the deck is not read again for each. */
const follow = (standing: Standing | undefined, { attempt }: Change): Standing | null =>
  standing && attempt ? standingAfter(standing, attempt, Date.now()) : null;

/** The pages that show one course. They share one reading of its deck. */
export function CoursePages({ route, courseId }: { route: Route; courseId: string }) {
  const db = useDeck();
  const live = useLive(() => readStanding(db, courseId, Date.now()), READ, courseId, follow);
  // It reads for itself, and what the other pages need is read meanwhile.
  if (route.view === 'search') return <SearchView courseId={courseId} />;
  if (live.state === 'loading') return <p class="soft">{t('reading')}</p>;
  if (live.state === 'failed') return <Trouble text={tell(live.error)} />;
  if (!live.value) return <Trouble text={t('errorCourseGone')} />;
  return (
    <>
      <CoursePage route={route} standing={live.value} />
      <AtItem route={route} />
    </>
  );
}

function CoursePage({ route, standing }: { route: Route; standing: Standing }) {
  switch (route.view) {
    case 'checklist':
      return <ChecklistView standing={standing} />;
    case 'report':
      return <ReportView standing={standing} />;
    case 'own':
      return <OwnView standing={standing} />;
    case 'out':
      return <OutView standing={standing} />;
    case 'lessons':
      return <LessonsView standing={standing} />;
    case 'clips':
      return <ClipsView standing={standing} />;
    case 'clip':
      return <ClipView key={route.id} standing={standing} id={route.id} />;
    case 'topic':
      return <TopicView key={route.id} standing={standing} id={route.id} />;
    case 'syllabus':
      return <SyllabusView standing={standing} />;
    case 'round':
      return <RoundView key={route.topicId} standing={standing} topicId={route.topicId} />;
    case 'print':
      return <PrintView standing={standing} />;
    case 'course':
      return <CourseView standing={standing} />;
    default:
      return <CoverageView standing={standing} />;
  }
}
