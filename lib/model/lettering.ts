import { z } from 'zod';
import { Id } from './basics.ts';

/** The longest text of a problem, a part, a solution, a scheme or an answer, in UTF-16 units. */
export const LONGEST_LETTERING = 50_000;

/** Text and pictures that belong together: typed, clipped, photographed or framed out of a PDF. */
export const Lettering = z.object({
  /** Formulas stand in it as TeX between \( \). */
  text: z.string().trim().max(LONGEST_LETTERING),
  /** In their order. */
  pictureIds: z.array(Id).max(20),
});
export type Lettering = z.infer<typeof Lettering>;

/** Nothing yet. */
export const NO_LETTERING: Lettering = { text: '', pictureIds: [] };

/** Whether anything stands there. */
export const hasLettering = ({ text, pictureIds }: Lettering): boolean =>
  text !== '' || pictureIds.length > 0;
