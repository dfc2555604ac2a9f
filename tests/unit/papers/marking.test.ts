import fc from 'fast-check';
import { describe, expect, it, test } from 'vitest';
import { LOST_BECAUSE, type Mark } from '#lib/model/mark.ts';
import { markingOf, replacedBy } from '#lib/papers/marking.ts';
import { aMark, aPart, MORNING, newId } from '../builders.ts';

const part = aPart({ marks: 4 });
const mark = (over: Partial<Mark> = {}): Mark => aMark({ partId: part.id, ...over });
const only = (marks: readonly Mark[]) => markingOf([part], marks).parts[0]!;

describe('marking', () => {
  it('is strict: an unmarked part is lost until it is marked', () => {
    const other = aPart({ marks: 6 });
    const marking = markingOf([part, other], [mark({ marks: 3 })]);
    expect(marking).toMatchObject({ got: 3, outOf: 10, unmarked: 6 });
    expect([...marking.parts[1]!.lost]).toEqual([['unmarked', 6]]);
  });

  it('keeps what a later mark replaces', () => {
    const first = mark({ marks: 1 });
    const second = mark({ marks: 4, at: MORNING + 1, replaces: [first.id] });
    const stands = only([second, first]);
    expect(stands).toMatchObject({ got: 4, isOpen: false, standing: [second], history: [first, second] });
    const back = mark({ marks: null, at: MORNING + 2, replaces: [second.id] });
    expect(only([first, second, back])).toMatchObject({ got: 0, isMarked: false, isOpen: false });
  });

  it('counts the lower of two that did not see each other, until it is settled', () => {
    const self = mark({ marks: 4 });
    const friend = mark({ marks: 2, by: { isStudent: false, name: 'Examiner' }, at: MORNING + 1 });
    const open = only([self, friend]);
    expect(open).toMatchObject({ got: 2, isOpen: true, standing: [self, friend] });
    const settled = mark({ marks: 3, at: MORNING + 2, replaces: replacedBy(open) });
    expect(only([self, settled, friend])).toMatchObject({ got: 3, isOpen: false, standing: [settled] });
    expect(only([self, mark({ marks: 4 })]).isOpen).toBe(false);
  });

  it('says what marks were lost by', () => {
    const stands = only([mark({ marks: 0.5, lost: [{ because: 'slip', marks: 2 }] })]);
    expect([...stands.lost]).toEqual([
      ['slip', 2],
      ['unsaid', 1.5],
    ]);
  });

  it('goes by what the part is out of now', () => {
    const was = mark({ marks: 6, outOf: 8, lost: [{ because: 'time', marks: 2 }] });
    expect(only([was])).toMatchObject({ got: 4 });
    expect(only([was]).lost.size).toBe(0);
  });

  it('counts nothing for parts that the paper does not have', () => {
    expect(markingOf([part], [aMark()])).toMatchObject({ got: 0, outOf: 4, unmarked: 4 });
  });
});

const marksOfPart = fc
  .array(
    fc.record({
      marks: fc.option(fc.integer({ min: 0, max: 4 })),
      at: fc.nat(100),
      because: fc.constantFrom(...LOST_BECAUSE),
      sees: fc.nat(3),
    }),
    { maxLength: 6 },
  )
  .map((all) => {
    const made: Mark[] = [];
    for (const { marks, at, because, sees } of all) {
      const missing = marks === null ? 0 : 4 - marks;
      made.push(
        mark({
          id: newId(),
          marks,
          at: MORNING + at,
          lost: missing > 0 ? [{ because, marks: missing }] : [],
          replaces: made.slice(0, sees).map(({ id }) => id),
        }),
      );
    }
    return made;
  });

test('got and lost add up to what there is, whatever the order, and no mark is forgotten', () => {
  fc.assert(
    fc.property(marksOfPart, (marks) => {
      const stands = only(marks);
      const lost = [...stands.lost.values()].reduce((sum, one) => sum + one, 0);
      expect(stands.got + lost).toBe(4);
      expect(stands.history).toHaveLength(marks.length);
      expect(only([...marks].reverse())).toEqual(stands);
      expect(stands.standing.length > 0).toBe(marks.length > 0);
    }),
  );
});
