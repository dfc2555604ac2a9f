import { createHash } from 'node:crypto';
import fc from 'fast-check';
import { describe, expect, it, test } from 'vitest';
import type { Mark } from '#lib/model/mark.ts';
import {
  type MarkFile,
  readMarkFile,
  type Sealed,
  sealedText,
  writeMarkFile,
} from '#lib/papers/mark-file.ts';
import { mergeMarks, type OwnSitting } from '#lib/papers/merge-marks.ts';
import { aMark, aPaper, aPart, aSitting, MORNING, newId } from '../builders.ts';

const digest = (text: string): Promise<string> =>
  Promise.resolve(createHash('sha256').update(text, 'utf8').digest('hex'));

function aSealed(over: Partial<Sealed> = {}): Sealed {
  const parts = [aPart({ number: '1 (a)' }), aPart({ number: '1 (b)', marks: 6 })];
  const paper = aPaper({ parts });
  const sitting = aSitting({ paperId: paper.id, answers: 'typed' });
  return {
    paper,
    topics: [{ id: newId(), code: '1', title: 'Waves' }],
    pictures: { [newId()]: { dataUrl: 'data:image/png;base64,AAAA', width: 2, height: 3, alt: '' } },
    sitting,
    events: [{ id: newId(), sittingId: sitting.id, at: MORNING + 1, kind: 'ended' }],
    answers: [
      { id: newId(), sittingId: sitting.id, partId: parts[0]!.id, text: 'g k', changedAt: MORNING + 1 },
    ],
    ...over,
  };
}
const textOf = (sealed: Sealed, marks: Mark[] = []): Promise<string> =>
  writeMarkFile({ savedAt: MORNING, student: 'A student', sealed, marks }, digest);

/** A file with something in it changed, as an editor would. */
const edited = async (sealed: Sealed, change: (file: MarkFile) => void): Promise<string> => {
  const file = JSON.parse(await textOf(sealed)) as MarkFile;
  change(file);
  return JSON.stringify(file);
};

const name = (error: unknown): string => (error as Error).message;
const reading = (text: string): Promise<string> => readMarkFile(text, digest).then(() => 'read', name);

describe('a mark file', () => {
  test('comes back as it was written', async () => {
    const words = fc.string({ unit: 'grapheme', maxLength: 40 });
    await fc.assert(
      fc.asyncProperty(words, words, fc.integer({ min: 0, max: 8 }), async (answer, remark, halves) => {
        const sealed = aSealed();
        sealed.answers[0]!.text = answer;
        const mark = aMark({
          sittingId: sealed.sitting.id,
          partId: sealed.paper.parts[0]!.id,
          marks: halves / 2,
          remark: remark.trim(),
          lost: halves < 8 ? [{ because: 'method', marks: 4 - halves / 2 }] : [],
        });
        const file = await readMarkFile(await textOf(sealed, [mark]), digest);
        expect(file).toMatchObject({ savedAt: MORNING, student: 'A student' });
        expect(file.sealed).toEqual(sealed);
        expect(file.marks).toEqual([mark]);
        expect(await writeMarkFile(file, digest)).toBe(await textOf(sealed, [mark]));
      }),
      { numRuns: 50 },
    );
  });

  it('is sealed whatever the order of its keys', async () => {
    const sealed = aSealed();
    const turned = Object.fromEntries(Object.entries(sealed).reverse()) as unknown as Sealed;
    expect(sealedText(turned)).toBe(sealedText(sealed));
  });

  it.each<[string, (file: MarkFile) => void]>([
    ['an answer', (file) => void (file.sealed.answers[0]!.text = 'g / k')],
    ['the marks of a part', (file) => void (file.sealed.paper.parts[0]!.marks = 9)],
    ['the scheme', (file) => void (file.sealed.paper.parts[0]!.scheme.text = 'Anything.')],
    ['the start', (file) => void (file.sealed.sitting.startedAt += 1)],
    ['the end', (file) => void (file.sealed.events[0]!.at += 1)],
    ['the digest', (file) => void (file.digest = '0'.repeat(64))],
  ])('with %s changed is told', async (_, change) => {
    expect(await reading(await edited(aSealed(), change))).toBe('errorMarkFileChanged');
  });

  it('may bring other marks', async () => {
    const text = await edited(aSealed(), (file) => {
      const { sitting, paper } = file.sealed;
      file.marks.push(aMark({ sittingId: sitting.id, partId: paper.parts[0]!.id }));
    });
    expect(await reading(text)).toBe('read');
  });

  it('that is something else, newer, cut off or not right is told', async () => {
    const text = await textOf(aSealed());
    expect(await reading('{"format":"plumbline-course-pack","version":1}')).toBe('errorMarkFileNone');
    expect(await reading('Dear examiner')).toBe('errorMarkFileNone');
    expect(await reading(text.slice(0, -40))).toBe('errorMarkFileDamaged');
    expect(await reading(await edited(aSealed(), (file) => void (file.version = 2 as 1)))).toBe(
      'errorMarkFileNewer',
    );
    const swapped = (file: MarkFile): void => void (file.sealed.paper.id = newId());
    expect(await reading(await edited(aSealed(), swapped))).toBe('errorMarkFileWrong');
    const strange = (file: MarkFile): void => void file.marks.push(aMark());
    expect(await reading(await edited(aSealed(), strange))).toBe('errorMarkFileWrong');
  });
});

describe('marks that come back', () => {
  const sealed = aSealed();
  const [first, second] = sealed.paper.parts as [Sealed['paper']['parts'][0], Sealed['paper']['parts'][0]];
  const mark = (over: Partial<Mark> = {}): Mark =>
    aMark({ sittingId: sealed.sitting.id, partId: first.id, ...over });
  const friend = { isStudent: false, name: 'Friend' };
  const own = async (marks: Mark[], over: Partial<OwnSitting> = {}): Promise<OwnSitting> => ({
    sitting: sealed.sitting,
    parts: sealed.paper.parts,
    marks,
    handedOut: [await digest(sealedText(sealed))],
    ...over,
  });
  const fileWith = async (marks: Mark[], of = sealed): Promise<MarkFile> =>
    readMarkFile(await textOf(of, marks), digest);

  it('are taken in once, however often the file is opened', async () => {
    const theirs = mark({ by: friend, partId: second.id });
    const file = await fileWith([theirs]);
    expect(mergeMarks(await own([]), file)).toEqual({ added: [theirs], open: [], odd: [] });
    expect(mergeMarks(await own([theirs]), file)).toEqual({ added: [], open: [], odd: [] });
  });

  it('stand beside the student’s own, and what differs is open', async () => {
    const ours = mark({ marks: 4 });
    const theirs = mark({ marks: 1, by: friend });
    const merged = mergeMarks(await own([ours]), await fileWith([theirs]));
    expect(merged.added).toEqual([theirs]);
    expect(merged.open.map(({ part, got, standing }) => [part.id, got, standing.length])).toEqual([
      [first.id, 1, 2],
    ]);
  });

  it('replace what whoever marked had seen', async () => {
    const ours = mark({ marks: 4 });
    const theirs = mark({ marks: 1, by: friend, at: MORNING + 1, replaces: [ours.id] });
    expect(mergeMarks(await own([ours]), await fileWith([ours, theirs])).open).toEqual([]);
    // Meanwhile the student marked again: neither saw the other.
    const again = mark({ marks: 3, at: MORNING + 1, replaces: [ours.id] });
    expect(mergeMarks(await own([ours, again]), await fileWith([ours, theirs])).open).toHaveLength(1);
  });

  it('change none of the student’s own', async () => {
    const ours = mark({ marks: 4 });
    const merged = mergeMarks(await own([ours]), await fileWith([{ ...ours, marks: 0 }]));
    expect(merged).toMatchObject({ added: [], open: [], odd: [{ about: 'altered' }] });
  });

  it('for no part, for too many marks or in the student’s name are told', async () => {
    const file = await fileWith([
      mark({ partId: newId(), by: friend }),
      mark({ marks: 8, outOf: 8, by: friend }),
      mark({ marks: 2 }),
    ]);
    const merged = mergeMarks(await own([]), file);
    expect(merged.odd.map(({ about }) => about)).toEqual(['unknownPart', 'overMarks', 'asStudent']);
    expect(merged.added.map(({ by, marks }) => [by.isStudent, marks])).toEqual([[false, 2]]);
    // The same file once more has nothing new.
    expect(mergeMarks(await own(merged.added), file).added).toEqual([]);
  });

  it('of another sitting or paper, or of this one with something else in it, are refused', async () => {
    const other = await fileWith([], aSealed());
    expect(
      await own([])
        .then((ours) => mergeMarks(ours, other))
        .catch(name),
    ).toBe('errorMarkFileForeign');
    const sitting = { ...sealed.sitting };
    const swapped = aPaper({ parts: sealed.paper.parts });
    sitting.paperId = swapped.id;
    const paper = await fileWith([], { ...sealed, sitting, paper: swapped });
    expect(
      await own([])
        .then((ours) => mergeMarks(ours, paper))
        .catch(name),
    ).toBe('errorMarkFileForeign');
    // Changed, and sealed anew by whoever changed it.
    const parts = sealed.paper.parts.map((part) => ({ ...part, marks: 1 }));
    const forged = await fileWith([], { ...sealed, paper: { ...sealed.paper, parts } });
    expect(
      await own([])
        .then((ours) => mergeMarks(ours, forged))
        .catch(name),
    ).toBe('errorMarkFileSealed');
    expect(mergeMarks(await own([], { handedOut: [] }), forged).added).toEqual([]);
  });

  const given = fc.array(fc.tuple(fc.boolean(), fc.option(fc.nat(4)), fc.nat(50)), { maxLength: 6 });
  const marksFrom = (all: [boolean, number | null, number][], isStudent: boolean): Mark[] =>
    all.map(([onFirst, marks, at]) =>
      mark({
        marks,
        at: MORNING + at,
        partId: onFirst ? first.id : second.id,
        by: isStudent ? { isStudent, name: '' } : friend,
      }),
    );
  test('lose nothing and add nothing twice', async () => {
    const { handedOut } = await own([]);
    await fc.assert(
      fc.asyncProperty(given, given, async (mine, yours) => {
        const [ours, theirs] = [marksFrom(mine, true), marksFrom(yours, false)];
        const base = { sitting: sealed.sitting, parts: sealed.paper.parts, handedOut };
        const file = await fileWith([...ours, ...theirs]);
        const { added, odd } = mergeMarks({ ...base, marks: ours }, file);
        expect(added).toEqual(theirs);
        expect(odd).toEqual([]);
        expect(mergeMarks({ ...base, marks: [...ours, ...added] }, file).added).toEqual([]);
      }),
      { numRuns: 50 },
    );
  });
});
