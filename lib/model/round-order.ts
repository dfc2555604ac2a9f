import { z } from 'zod';

/**
 * The order in which a round asks: what gains most first, or as the notes stand, from the last to the first, or such
 * that nothing follows what it follows there.
 */
export const RoundOrder = z.enum(['gain', 'forward', 'backToFront', 'outOfOrder']);
export type RoundOrder = z.infer<typeof RoundOrder>;
