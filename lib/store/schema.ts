import type { DBSchema, IDBPDatabase, StoreNames } from 'idb';
import { Attempt } from '#lib/model/attempt.ts';
import { Clip } from '#lib/model/clip.ts';
import { Course } from '#lib/model/course.ts';
import { Line, Question } from '#lib/model/item.ts';
import { KeptPack } from '#lib/model/kept-pack.ts';
import { Lesson } from '#lib/model/lesson.ts';
import { MemoryCache } from '#lib/model/memory-cache.ts';
import { NextUp } from '#lib/model/next-up.ts';
import { Picture } from '#lib/model/picture.ts';
import { SetAside } from '#lib/model/set-aside.ts';
import { Settings } from '#lib/model/settings.ts';
import { Source } from '#lib/model/source.ts';
import { SourceFile } from '#lib/model/source-file.ts';
import { Step } from '#lib/model/step.ts';
import { Statement, Topic } from '#lib/model/topic.ts';

/** The database's shape. Change it together with a new file in migrations/. */
export interface Deck extends DBSchema {
  courses: { key: string; value: Course };
  topics: { key: string; value: Topic; indexes: { course: string } };
  statements: { key: string; value: Statement; indexes: { course: string } };
  sources: { key: string; value: Source; indexes: { url: string } };
  clips: { key: string; value: Clip; indexes: { course: string; source: string } };
  pictures: { key: string; value: Picture; indexes: { course: string; clip: string } };
  /** Files behind sources, kept when the student said so. */
  files: { key: string; value: SourceFile; indexes: { source: string } };
  questions: { key: string; value: Question; indexes: { course: string; clip: string } };
  lines: { key: string; value: Line; indexes: { course: string; clip: string } };
  lessons: { key: string; value: Lesson; indexes: { course: string } };
  /** By course: the course pack that it came from or was saved as. */
  packs: { key: string; value: KeptPack };
  /** Append-only facts. */
  attempts: {
    key: string;
    value: Attempt;
    indexes: { course: string; item: string; courseAt: [string, number] };
  };
  settings: { key: string; value: Settings };
  /** Caches, by course. Any row may be deleted at any time. */
  nextUp: { key: string; value: NextUp };
  memories: { key: string; value: MemoryCache };
  /** What can be undone, oldest first. */
  steps: { key: number; value: Step };
  setAside: { key: number; value: SetAside };
}

export type Db = IDBPDatabase<Deck>;
export type StoreName = StoreNames<Deck>;

/** What each row is checked against when it is read and when it is written. */
export const ROWS = {
  courses: Course,
  topics: Topic,
  statements: Statement,
  sources: Source,
  clips: Clip,
  pictures: Picture,
  files: SourceFile,
  questions: Question,
  lines: Line,
  lessons: Lesson,
  packs: KeptPack,
  attempts: Attempt,
  settings: Settings,
  nextUp: NextUp,
  memories: MemoryCache,
  steps: Step,
  setAside: SetAside,
} as const satisfies { [S in StoreName]: { safeParse(row: unknown): unknown } };

export type Row<S extends StoreName> = Deck[S]['value'];
