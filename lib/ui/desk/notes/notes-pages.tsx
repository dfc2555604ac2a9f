import { Trouble } from '../../parts/trouble.tsx';
import { t, tell } from '../../text.ts';
import type { Route } from '../route.ts';
import { CondenseView } from './condense-view.tsx';
import { NotesView } from './notes-view.tsx';
import { ReadView } from './read-view.tsx';
import { useNotes } from './use-notes.ts';

/** The pages on notes. They read the course without its attempts, so that a line is written at once. */
export type NotesRoute = Extract<Route, { view: 'notes' | 'read' | 'condense' }>;

/** Whether a page is one of them. */
export const isNotesRoute = (route: Route): route is NotesRoute =>
  route.view === 'notes' || route.view === 'read' || route.view === 'condense';

/** The pages that share one reading of the notes. */
export function NotesPages({ route, courseId }: { route: NotesRoute; courseId: string }) {
  const live = useNotes(courseId);
  if (live.state === 'loading') return <p class="soft">{t('reading')}</p>;
  if (live.state === 'failed') return <Trouble text={tell(live.error)} />;
  if (!live.value) return <Trouble text={t('errorCourseGone')} />;
  switch (route.view) {
    case 'read':
      return <ReadView key={route.id} notes={live.value} topicId={route.id} />;
    case 'condense':
      return <CondenseView key={route.id} notes={live.value} topicId={route.id} />;
    case 'notes':
      return <NotesView notes={live.value} />;
  }
}
