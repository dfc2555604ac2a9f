import { describe, expect, it, test } from 'vitest';
import { Mark } from '#lib/model/mark.ts';
import { Paper, PaperPart } from '#lib/model/paper.ts';
import { Problem } from '#lib/model/problem.ts';
import { Redo } from '#lib/model/redo.ts';
import { Sitting, SittingEvent } from '#lib/model/sitting.ts';
import { aMark, aPaper, aPart, aProblem, aRedo, aSitting, MORNING, newId } from '../builders.ts';

const fits = (schema: { safeParse: (row: unknown) => { success: boolean } }, row: unknown): boolean =>
  schema.safeParse(row).success;

describe('a problem', () => {
  it('may be a picture alone, starred or not, without a solution', () => {
    const statement = { text: '', pictureIds: [newId()] };
    const solution = { text: '', pictureIds: [] };
    expect(fits(Problem, aProblem({ statement, solution, star: null }))).toBe(true);
  });

  it.each([
    { statement: { text: ' ', pictureIds: [] } },
    { marks: 0 },
    { marks: 2.25 },
    { title: ' ' },
    { star: 'nice' as 'important' },
  ])('with %o is refused', (wrong) => {
    expect(fits(Problem, aProblem(wrong))).toBe(false);
    expect(fits(Problem, aProblem())).toBe(true);
  });
});

describe('a redo', () => {
  it('may become an unclear mark or a question, where something went wrong', () => {
    for (const kind of ['unclearTopic', 'unclearClip', 'question'] as const)
      expect(fits(Redo, aRedo({ became: { kind, id: newId() } }))).toBe(true);
    expect(fits(Redo, aRedo({ wentWrong: '', became: { kind: 'question', id: newId() } }))).toBe(false);
  });

  it.each([{ marks: 7 }, { marks: -1 }, { outOf: 0, marks: 0 }, { seconds: -1 }])(
    'with %o is refused',
    (wrong) => {
      expect(fits(Redo, aRedo(wrong))).toBe(false);
    },
  );
});

describe('a paper', () => {
  it('keeps parts without marks or number, which someone still has to say', () => {
    expect(fits(PaperPart, aPart({ number: '', marks: 0 }))).toBe(true);
    expect(fits(Paper, aPaper({ parts: [aPart({ number: '', marks: 0 })] }))).toBe(true);
  });

  it('has every part and every grade once', () => {
    const part = aPart();
    expect(fits(Paper, aPaper({ parts: [part, part] }))).toBe(false);
    const grade = { grade: 'A', marks: 40 };
    expect(fits(Paper, aPaper({ boundaries: [grade, { grade: 'B', marks: 30 }] }))).toBe(true);
    expect(fits(Paper, aPaper({ boundaries: [grade, grade] }))).toBe(false);
  });

  it.each([{ minutes: 0 }, { minutes: 601 }, { printedTotal: 0 }, { title: '' }])(
    'with %o is refused',
    (wrong) => {
      expect(fits(Paper, aPaper(wrong))).toBe(false);
    },
  );
});

describe('a sitting', () => {
  it.each([{ extraPercent: -1 }, { minutes: 0 }, { startedAt: -5 }, { answers: 'aloud' as 'typed' }])(
    'with %o is refused',
    (wrong) => {
      expect(fits(Sitting, aSitting(wrong))).toBe(false);
      expect(fits(Sitting, aSitting({ extraPercent: 25, restBreaks: true }))).toBe(true);
    },
  );

  test('an event that turns to a part names it', () => {
    const event = { id: newId(), sittingId: newId(), at: MORNING };
    expect(fits(SittingEvent, { ...event, kind: 'ended' })).toBe(true);
    expect(fits(SittingEvent, { ...event, kind: 'turnedTo', partId: newId() })).toBe(true);
    expect(fits(SittingEvent, { ...event, kind: 'turnedTo' })).toBe(false);
    expect(fits(SittingEvent, { ...event, kind: 'paused' })).toBe(false);
  });
});

describe('a mark', () => {
  it.each([
    { marks: 5 },
    { lost: [{ because: 'slip' as const, marks: 2 }] },
    {
      marks: 0,
      lost: [
        { because: 'slip' as const, marks: 1 },
        { because: 'slip' as const, marks: 1 },
      ],
    },
    { marks: null, lost: [{ because: 'time' as const, marks: 1 }] },
  ])('with %o is refused', (wrong) => {
    expect(fits(Mark, aMark(wrong))).toBe(false);
    expect(fits(Mark, aMark({ lost: [{ because: 'slip', marks: 1 }] }))).toBe(true);
    expect(fits(Mark, aMark({ marks: null }))).toBe(true);
  });

  it('does not replace itself', () => {
    const id = newId();
    expect(fits(Mark, aMark({ id, replaces: [id] }))).toBe(false);
  });
});
