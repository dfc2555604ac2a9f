import { useEffect, useLayoutEffect, useState } from 'preact/hooks';
import type { Course } from '#lib/model/course.ts';
import { readSettings } from '#lib/store/actions/courses.ts';
import { readFirstUp, type FirstUp } from '#lib/store/first-up.ts';
import { readStanding, type Standing } from '../derive/next-up.ts';
import { useDeck } from '../deck/deck-context.tsx';
import { deskLink } from '../parts/desk-link.ts';
import { Trouble } from '../parts/trouble.tsx';
import { t, tell } from '../text.ts';
import { takeTrouble } from '../trouble.ts';
import { KeepButton } from './keep-button.tsx';
import { NextCard } from './next-card.tsx';
import { PdfButton } from './pdf-button.tsx';
import { PopupRound } from './popup-round.tsx';

/** The toolbar popup: what gains most now, gaps in one line, a round. */
export function Popup() {
  const db = useDeck();
  const [first, setFirst] = useState<FirstUp | null>(null);
  const [standing, setStanding] = useState<Standing | undefined>();
  const [trouble, setTrouble] = useState<string | null>(null);
  const [round, setRound] = useState(0);
  const [running, setRunning] = useState(false);

  // Not after a frame, as effects are: the question is what the popup is opened for.
  useLayoutEffect(() => {
    const fail = (error: unknown) => setTrouble(tell(error));
    void takeTrouble().then((text) => text !== null && setTrouble(text));
    readFirstUp(db).then(setFirst, fail);
  }, [db]);
  const courseId = first?.course?.id;
  useEffect(() => {
    if (courseId === undefined || running) return;
    // After the first paint: the deck may be large.
    const later = setTimeout(() => {
      readStanding(db, courseId, Date.now()).then(setStanding, (error: unknown) => setTrouble(tell(error)));
    }, 0);
    return () => clearTimeout(later);
  }, [db, courseId, running]);

  const again = async (course: Course) => {
    try {
      // Settings may have changed in the desk meanwhile; what gains most has changed for certain.
      const settings = await readSettings(db);
      setStanding(await readStanding(db, course.id, Date.now()));
      setFirst({ ...first!, settings, item: null });
      setRound((count) => count + 1);
    } catch (error) {
      setTrouble(tell(error));
      setRunning(false);
    }
  };
  if (!first) return <Trouble text={trouble} />;
  const { course } = first;
  if (!course) return <NoCourse trouble={trouble} />;
  if (running && standing)
    return (
      <PopupRound
        key={round}
        standing={standing}
        firstId={first.item?.id}
        minutes={first.settings.roundMinutes}
        again={() => void again(course)}
      />
    );
  return (
    <main class="stack">
      <CourseLine course={course} />
      <Trouble text={trouble} />
      <NextCard first={first} standing={standing} start={() => setRunning(true)} />
      <KeepButton fail={(error) => setTrouble(tell(error))} />
      <PdfButton fail={(error) => setTrouble(tell(error))} />
    </main>
  );
}

function CourseLine({ course }: { course: Course }) {
  return (
    <header class="row popup-head">
      <h1>{course.name}</h1>
      <a href={deskLink('coverage')} target="_blank">
        {t('openDesk')}
      </a>
    </header>
  );
}

function NoCourse({ trouble }: { trouble: string | null }) {
  return (
    <main class="stack">
      <h1>{t('extName')}</h1>
      <Trouble text={trouble} />
      <p>{t('popupNoCourse')}</p>
      <div>
        <a class="button" href={deskLink('course')} target="_blank">
          {t('slipStartCourse')}
        </a>
      </div>
    </main>
  );
}
