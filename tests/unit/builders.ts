import type { Attempt } from '#lib/model/attempt.ts';
import type { Clip } from '#lib/model/clip.ts';
import type { Course } from '#lib/model/course.ts';
import type { Lesson } from '#lib/model/lesson.ts';
import type { Line, Question } from '#lib/model/item.ts';
import type { Mark } from '#lib/model/mark.ts';
import type { Reason } from '#lib/model/next-up.ts';
import { NEW_PART, type Paper, type PaperPart } from '#lib/model/paper.ts';
import type { Problem } from '#lib/model/problem.ts';
import type { Redo } from '#lib/model/redo.ts';
import type { Sitting } from '#lib/model/sitting.ts';
import type { Statement, Topic } from '#lib/model/topic.ts';

/** A moment to count from: 2026-03-02, 08:00 UTC. */
export const MORNING = Date.UTC(2026, 2, 2, 8);

let made = 0;
/** Ids in order, the same in every run. */
export const newId = (): string => `00000000-0000-4000-8000-${String(++made).padStart(12, '0')}`;

const kept = () => ({ id: newId(), createdAt: MORNING, changedAt: MORNING });

export const aCourse = (over: Partial<Course> = {}): Course => ({
  ...kept(),
  name: 'Foundation Oceanography',
  examDay: '2026-04-20',
  targetSides: 8,
  targetQuestions: 100,
  paper: 'a4',
  columns: 2,
  ...over,
});

export const aTopic = (over: Partial<Topic> = {}): Topic => ({
  ...kept(),
  courseId: newId(),
  parentId: null,
  order: 0,
  code: '1',
  title: 'Waves',
  share: null,
  unit: 'parts',
  group: '',
  off: false,
  dropped: false,
  unclear: false,
  cleared: [],
  ...over,
});

export const aStatement = (over: Partial<Statement> = {}): Statement => ({
  ...kept(),
  courseId: newId(),
  topicId: newId(),
  order: 0,
  code: '(a)',
  text: 'State what a wave is.',
  group: '',
  off: false,
  ...over,
});

export const aClip = (over: Partial<Clip> = {}): Clip => ({
  ...kept(),
  courseId: newId(),
  sourceId: newId(),
  topicIds: [],
  statementIds: [],
  text: 'Long waves outrun short ones.',
  html: '<p>Long waves outrun short ones.</p>',
  ownWords: '',
  unclear: false,
  headings: [],
  selectors: [{ type: 'TextQuoteSelector', exact: 'Long waves outrun short ones.' }],
  pictureIds: [],
  leftOut: null,
  cleared: [],
  ...over,
});

export const aQuestion = (over: Partial<Question> = {}): Question => ({
  ...kept(),
  courseId: newId(),
  topicId: newId(),
  clipId: null,
  statementIds: [],
  prompt: 'Which waves travel faster in deep water?',
  answer: 'The longer ones.',
  marks: 1,
  lineId: null,
  ...over,
});

export const aLine = (over: Partial<Line> = {}): Line => ({
  ...kept(),
  courseId: newId(),
  topicId: newId(),
  clipId: null,
  statementIds: [],
  lead: 'Deep-water speed',
  rest: 'grows with the square root of the wavelength',
  order: 0,
  depth: 0,
  leftOut: null,
  pictureIds: [],
  ...over,
});

export const aLesson = (over: Partial<Lesson> = {}): Lesson => ({
  ...kept(),
  courseId: newId(),
  topicId: newId(),
  kind: 'lesson',
  title: 'Waves in deep water',
  held: false,
  wantedFrom: '',
  wantedBy: null,
  ...over,
});

export const anAttempt = (over: Partial<Attempt> = {}): Attempt => ({
  id: newId(),
  courseId: newId(),
  topicId: newId(),
  itemKind: 'question',
  itemId: newId(),
  roundId: newId(),
  at: MORNING,
  seconds: 9,
  marks: 1,
  outOf: 1,
  typed: '',
  order: 'gain',
  turned: false,
  ...over,
});

/** Numbers to explain an item by: 41 % without it, 73 % with it. */
export const aReason = (over: Partial<Reason> = {}): Reason => ({
  examMarks: 6.666,
  chanceIfLeft: 0.4149,
  chanceIfAsked: 0.7251,
  seconds: 11.6,
  aimAt: MORNING + 48.9 * 86_400_000,
  isForExam: true,
  ...over,
});

export const aProblem = (over: Partial<Problem> = {}): Problem => ({
  ...kept(),
  courseId: newId(),
  title: 'Pressure at the sea bed',
  from: 'Sheet 3, problem 2',
  topicIds: [],
  marks: 6,
  statement: { text: 'Find the pressure at a depth of 200 m.', pictureIds: [] },
  solution: { text: 'About 2.1 MPa.', pictureIds: [] },
  star: 'hardForMe',
  ...over,
});

export const aRedo = (over: Partial<Redo> = {}): Redo => ({
  id: newId(),
  courseId: newId(),
  problemId: newId(),
  topicIds: [],
  at: MORNING,
  seconds: 400,
  marks: 4,
  outOf: 6,
  wentWrong: 'Left out the pressure of the air.',
  became: null,
  ...over,
});

export const aPart = (over: Partial<PaperPart> = {}): PaperPart => ({
  id: newId(),
  number: '1',
  marks: 4,
  ...NEW_PART,
  ...over,
});

export const aPaper = (over: Partial<Paper> = {}): Paper => ({
  ...kept(),
  courseId: newId(),
  title: 'Foundation Oceanography, paper 1',
  from: '',
  minutes: 60,
  printedTotal: null,
  parts: [],
  scheme: { text: '', pictureIds: [] },
  boundaries: [],
  ...over,
});

export const aSitting = (over: Partial<Sitting> = {}): Sitting => ({
  id: newId(),
  courseId: newId(),
  paperId: newId(),
  startedAt: MORNING,
  minutes: 60,
  extraPercent: 0,
  restBreaks: false,
  answers: 'onPaper',
  ...over,
});

export const aMark = (over: Partial<Mark> = {}): Mark => ({
  id: newId(),
  sittingId: newId(),
  partId: newId(),
  at: MORNING,
  by: { isStudent: true, name: '' },
  marks: 3,
  outOf: 4,
  remark: '',
  lost: [],
  replaces: [],
  ...over,
});
