/** What the student asked the clip script for: the selection, a moment of the video, or a frame to draw. */
export const WISHES = ['selection', 'moment', 'frame'] as const;
export type Wish = (typeof WISHES)[number];

/** Where the background leaves the wish for the clip script, in the extension's own world of the page. */
export const WISH_KEY = 'plumblineWish';
