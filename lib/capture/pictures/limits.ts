/**
 * The longest side, in pixels, and the weight, in bytes, that a picture is kept with. They repeat lib/model/picture.ts (a
 * test holds the two together), whose schemas would weigh more in the page than all of this folder.
 */
export const LONGEST_SIDE = 1600;
export const HEAVIEST_PICTURE = 4_000_000;

/** As lib/model/clip.ts and lib/model/picture.ts have them. */
export const MOST_PICTURES = 20;
export const LONGEST_ALT = 2000;
