import { z } from 'zod';

/** A random identifier, made by crypto.randomUUID. */
export const Id = z.uuid();
export type Id = z.infer<typeof Id>;

/** A moment: epoch milliseconds, UTC. */
export const Millis = z.number().int().nonnegative();
export type Millis = z.infer<typeof Millis>;

/** A calendar day in the student's own zone, such as "2026-05-14" (ISO 8601). */
export const Day = z.iso.date();
export type Day = z.infer<typeof Day>;

/** Fields that every stored thing has. */
export const Kept = z.object({ id: Id, createdAt: Millis, changedAt: Millis });
