import type { Id } from '#lib/model/basics.ts';
import { completed, type ItemMemory } from './memory.ts';
import { OFFSETS } from './offset.ts';
import { type GrowingClock, studyClock } from './study-time.ts';

/**
 * The shape below, and the model whose numbers it holds: to be raised with either, so that what was packed before is
 * thrown away and worked out from the attempts again.
 */
export const PACKED_VERSION = 2;

/**
 * The memories of a course and its clock in a few long arrays: plain data that can be cloned and kept as one row. Item
 * i has counts[i] presentations, one after another in `at`, `modelAt` and `decays`, one fewer in `taken` and
 * `full`, and OFFSETS.length values in `offsets`.
 */
export interface PackedMemories {
  version: number;
  ids: Id[];
  counts: Uint32Array;
  at: Float64Array;
  modelAt: Float64Array;
  decays: Float64Array;
  offsets: Float64Array;
  taken: Float64Array;
  full: Uint8Array;
  /** The attempts that the clock counts, epoch ms, oldest first. */
  moments: Float64Array;
}

/** What is kept of a course. */
export interface CourseMemory {
  memories: Map<Id, ItemMemory>;
  clock: GrowingClock;
}

/** Pack the memories of a course, with the clock that they were worked out by. */
export function packMemories({ memories, clock }: CourseMemory): PackedMemories {
  const all = [...memories.values()];
  const counts = Uint32Array.from(all, (memory) => memory.at.length);
  return {
    version: PACKED_VERSION,
    ids: [...memories.keys()],
    counts,
    at: joined(all.map((memory) => memory.at)),
    modelAt: joined(all.map((memory) => memory.modelAt)),
    decays: joined(all.map((memory) => memory.decays)),
    offsets: joined(all.map((memory) => memory.offset)),
    taken: joined(all.map((memory) => memory.taken)),
    full: Uint8Array.from(joined(all.map((memory) => memory.full))),
    moments: clock.moments(),
  };
}

/**
 * Unpack them: equal to what was packed.
 * @param packed of any origin; null is given for anything of another version, or that does not fit together
 */
export function unpackMemories(packed: unknown): CourseMemory | null {
  if (!isPacked(packed)) return null;
  const { ids, counts, at, modelAt, decays, offsets, taken, full, moments } = packed;
  const memories = new Map<Id, ItemMemory>();
  let from = 0;
  for (const [i, id] of ids.entries()) {
    const to = from + counts[i]!;
    const arrays = {
      at: part(at, from, to),
      modelAt: part(modelAt, from, to),
      decays: part(decays, from, to),
      offset: part(offsets, i * OFFSETS.length, (i + 1) * OFFSETS.length),
      // One fewer for each item before.
      taken: part(taken, from - i, to - i - 1),
      full: part(full, from - i, to - i - 1),
    };
    memories.set(id, completed(arrays));
    from = to;
  }
  return { memories, clock: studyClock(moments) };
}

function part(all: Float64Array | Uint8Array, from: number, to: number): number[] {
  const numbers: number[] = [];
  for (let i = from; i < to; i++) numbers.push(all[i]!);
  return numbers;
}

function isPacked(packed: unknown): packed is PackedMemories {
  if (typeof packed !== 'object' || packed === null) return false;
  const one = packed as Partial<PackedMemories>;
  const { ids, counts, at, offsets, taken, full } = one;
  if (one.version !== PACKED_VERSION || !Array.isArray(ids) || !(counts instanceof Uint32Array)) return false;
  const arrays = [at, one.modelAt, one.decays, offsets, taken, one.moments];
  if (!arrays.every((array) => array instanceof Float64Array) || !(full instanceof Uint8Array)) return false;
  if (ids.length !== counts.length || counts.some((count) => count === 0)) return false;
  const presentations = counts.reduce((sum, count) => sum + count, 0);
  const fits = (array: Float64Array | Uint8Array | undefined, length: number): boolean =>
    array?.length === length;
  return (
    fits(at, presentations) &&
    fits(one.modelAt, presentations) &&
    fits(one.decays, presentations) &&
    fits(taken, presentations - ids.length) &&
    fits(full, presentations - ids.length) &&
    fits(offsets, ids.length * OFFSETS.length)
  );
}

function joined(arrays: readonly (readonly number[])[]): Float64Array {
  const all = new Float64Array(arrays.reduce((sum, array) => sum + array.length, 0));
  let at = 0;
  for (const array of arrays) for (const one of array) all[at++] = one;
  return all;
}
