import { useLayoutEffect, useMemo, useState } from 'preact/hooks';
import type { Course } from '#lib/model/course.ts';
import { type PrintBlock, noteBlocks, questionBlocks } from '#lib/notes/print/blocks.ts';
import type { CourseDeck } from '#lib/store/course-deck.ts';
import { changeCourse } from '#lib/store/actions/courses.ts';
import { useDeck } from '../../deck/deck-context.tsx';
import { useAction } from '../../deck/use-action.ts';
import type { Standing } from '../../derive/next-up.ts';
import { type ShownPicture, usePictures } from '../../parts/pictures.tsx';
import { Trouble } from '../../parts/trouble.tsx';
import type { PrintLook } from '../../print/cells.ts';
import { t, tn } from '../../text.ts';
import { Choice } from './choice.tsx';
import { Sheets } from './sheets.tsx';
import { usePageSize } from './use-page-size.ts';
import { useSides } from './use-sides.ts';

/** The notes as they will be printed: side by side of paper, and what to print on what. */
export function PrintView({ standing }: { standing: Standing }) {
  const { deck } = standing;
  const { course, lines } = deck;
  const [look, setLook] = useState<PrintLook>('notes');
  const pictures = usePictures(
    useMemo(() => [...new Set(lines.flatMap((line) => line.pictureIds))], [lines]),
  );
  const blocks = useMemo(() => blocksOf(deck, look, pictures), [deck, look, pictures]);
  const addresses = useMemo(() => addressesOf(pictures), [pictures]);
  // Words that are to be covered stand in one column down the whole side.
  const columns = look === 'strip' ? 1 : course.columns;
  const counted = useSides(blocks, { paper: course.paper, columns, look });
  usePageSize(course.paper);
  useTitle(`${course.name} · ${lookName(look)}`);
  const isReady = counted?.isReady === true && pictures !== null;
  return (
    <div class="stack print-view">
      <div class="stack screen-only">
        <h1>{t('printTitle')}</h1>
        <PrintBar course={course} look={look} setLook={setLook} isReady={isReady && blocks.length > 0} />
        <p role="status">{isReady && sidesText(course, look, counted.counter.sides)}</p>
      </div>
      {counted && blocks.length > 0 && (
        <Sheets name={course.name} counter={counted.counter} pictures={addresses} />
      )}
    </div>
  );
}

function blocksOf(deck: CourseDeck, look: PrintLook, pictures: ShownPicture[] | null): PrintBlock[] {
  if (look === 'cards') return questionBlocks(deck.topics, deck.questions);
  return noteBlocks(deck.topics, deck.lines, new Map(there(pictures).map((one) => [one.id, one])));
}

const there = (pictures: ShownPicture[] | null) => (pictures ?? []).filter((one) => one !== null);

const addressesOf = (pictures: ShownPicture[] | null): Map<string, string> =>
  new Map(there(pictures).map(({ id, address }) => [id, address]));

const LOOKS: PrintLook[] = ['notes', 'strip', 'cards'];

function lookName(look: PrintLook): string {
  switch (look) {
    case 'notes':
      return t('printNotes');
    case 'strip':
      return t('printStrip');
    case 'cards':
      return t('printCards');
  }
}

const paperName = (paper: Course['paper']): string => (paper === 'a4' ? t('printA4') : t('printLetter'));

function sidesText({ paper, targetSides }: Course, look: PrintLook, sides: number): string {
  if (sides === 0) return look === 'cards' ? t('printNoQuestions') : t('printNoNotes');
  if (look === 'cards') return tn('printSheets', sides, paperName(paper));
  const count = tn('printSides', sides, paperName(paper));
  return look === 'notes' ? `${count} ${t('printTarget', targetSides)}` : `${count} ${t('printStripHow')}`;
}

interface BarProps {
  course: Course;
  look: PrintLook;
  setLook(look: PrintLook): void;
  isReady: boolean;
}

/** What is printed, on what, and the button for it. */
function PrintBar({ course, look, setLook, isReady }: BarProps) {
  const db = useDeck();
  const action = useAction();
  const change = (to: Partial<Pick<Course, 'paper' | 'columns'>>) =>
    void action.run(() => changeCourse(db, course.id, to, Date.now()));
  return (
    <div class="sheet stack">
      <div class="row ends">
        <Choice
          id="print-look"
          label={t('printWhat')}
          value={look}
          options={LOOKS.map((one) => [one, lookName(one)])}
          choose={setLook}
        />
        <Choice
          id="print-paper"
          label={t('printPaper')}
          value={course.paper}
          options={(['a4', 'letter'] as const).map((one) => [one, paperName(one)])}
          choose={(paper) => change({ paper })}
        />
        {look !== 'strip' && (
          <Choice
            id="print-columns"
            label={t('printColumns')}
            value={`${course.columns}`}
            options={[
              ['1', '1'],
              ['2', '2'],
            ]}
            choose={(columns) => change({ columns: columns === '1' ? 1 : 2 })}
          />
        )}
        <button class="main" disabled={!isReady} onClick={() => print()}>
          {t('print')}
        </button>
      </div>
      <Trouble text={action.trouble} />
    </div>
  );
}

/** The name under which a browser keeps what is printed. */
function useTitle(title: string): void {
  // Put back as soon as the page is left: later, it would take away the name that the next one has set.
  useLayoutEffect(() => {
    const before = document.title;
    document.title = title;
    return () => {
      document.title = before;
    };
  }, [title]);
}
