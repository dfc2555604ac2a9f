import type { Id } from '#lib/model/basics.ts';
import { completed, type ItemMemory } from './memory.ts';
import { OFFSETS } from './offset.ts';
import type { CourseMemory } from './course-memory.ts';
import type { Steps } from './steps.ts';
import { studyClock } from './study-time.ts';

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
  /** Items that were tried and were not in the deck. */
  gone: Id[];
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

/** Pack the memories of a course, with the clock that they were worked out by. */
export function* packMemories({ memories, gone, clock }: CourseMemory): Steps<PackedMemories> {
  const all = [...memories.values()];
  return {
    version: PACKED_VERSION,
    ids: [...memories.keys()],
    gone: [...gone],
    counts: Uint32Array.from(all, (memory) => memory.at.length),
    at: yield* joined(all.map((memory) => memory.at)),
    modelAt: yield* joined(all.map((memory) => memory.modelAt)),
    decays: yield* joined(all.map((memory) => memory.decays)),
    offsets: yield* joined(all.map((memory) => memory.offset)),
    taken: yield* joined(all.map((memory) => memory.taken)),
    full: Uint8Array.from(yield* joined(all.map((memory) => memory.full))),
    moments: clock.moments(),
  };
}

/** Unpack them: equal to what was packed. */
export function* unpackMemories(packed: PackedMemories): Steps<CourseMemory> {
  const { ids, gone, counts, at, modelAt, decays, offsets, taken, full, moments } = packed;
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
    yield;
  }
  return { memories, gone: new Set(gone), clock: studyClock(moments) };
}

function part(all: Float64Array | Uint8Array, from: number, to: number): number[] {
  const numbers: number[] = [];
  for (let i = from; i < to; i++) numbers.push(all[i]!);
  return numbers;
}

/** Whether something of any origin can be unpacked: it is of this version, and fits together. */
export function isPacked(packed: unknown): packed is PackedMemories {
  if (typeof packed !== 'object' || packed === null) return false;
  const one = packed as Partial<PackedMemories>;
  return one.version === PACKED_VERSION && hasArrays(one) && fitsTogether(one);
}

const LONG_ARRAYS = ['at', 'modelAt', 'decays', 'offsets', 'taken', 'moments'] as const;

const hasArrays = (one: Partial<PackedMemories>): one is PackedMemories =>
  Array.isArray(one.ids) &&
  Array.isArray(one.gone) &&
  one.counts instanceof Uint32Array &&
  one.full instanceof Uint8Array &&
  LONG_ARRAYS.every((name) => one[name] instanceof Float64Array);

function fitsTogether(packed: PackedMemories): boolean {
  const { ids, counts } = packed;
  if (ids.length !== counts.length || counts.includes(0)) return false;
  const presentations = counts.reduce((sum, count) => sum + count, 0);
  return (
    [packed.at, packed.modelAt, packed.decays].every(({ length }) => length === presentations) &&
    [packed.taken, packed.full].every(({ length }) => length === presentations - ids.length) &&
    packed.offsets.length === ids.length * OFFSETS.length
  );
}

function* joined(arrays: readonly (readonly number[])[]): Steps<Float64Array> {
  const all = new Float64Array(arrays.reduce((sum, array) => sum + array.length, 0));
  let at = 0;
  for (const array of arrays) {
    for (const one of array) all[at++] = one;
    yield;
  }
  return all;
}
