import { ekmanTransport } from './pages/ekman-transport.ts';
import { salinityArabic, shallowWavesJapanese } from './pages/far-shore.ts';
import { geostrophicBalance } from './pages/geostrophic-balance.ts';
import { groupVelocity } from './pages/group-velocity.ts';
import { hydrostaticBalance } from './pages/hydrostatic-balance.ts';
import { lightInTheSea } from './pages/light-in-the-sea.ts';
import { longText } from './pages/long-text.ts';
import { orbitFilm } from './pages/orbit-film.ts';
import { pressureAndDepth } from './pages/pressure-and-depth.ts';
import { roughWater } from './pages/rough-water.ts';
import { seiche } from './pages/seiche.ts';
import { tideForce } from './pages/tide-force.ts';
import { waterWaves } from './pages/water-waves.ts';
import { wavePictures } from './pages/wave-pictures.ts';
import type { DemoPage, Lesson } from './types.ts';

export type { DemoLine, DemoPage, DemoQuestion, Markup } from './types.ts';

export const lessons: readonly Lesson[] = [
  hydrostaticBalance,
  pressureAndDepth,
  waterWaves,
  groupVelocity,
  geostrophicBalance,
  ekmanTransport,
  tideForce,
  lightInTheSea,
  seiche,
  roughWater,
  longText,
  salinityArabic,
  shallowWavesJapanese,
  wavePictures,
  orbitFilm,
];

/** Every page with what a student makes of it. */
export const demoPages: readonly DemoPage[] = lessons.flatMap(({ article, study }) => {
  if (!study) return [];
  const { path, title, markup, author, site } = article;
  return [{ path, title, markup, author, site, ...study }];
});

/** The outline to import, as a file beside this one. */
export const syllabusFile = new URL('./syllabus.txt', import.meta.url);
