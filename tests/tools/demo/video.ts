/** The demo video (assets/orbits.webm, made by make-video.ts): its measures, and its captions. */
export const VIDEO = { width: 320, height: 180, seconds: 24, rate: 8 } as const;

/** The colour of the square at the top left, another one each second: it tells which moment a picture shows. */
export const videoColour = (time: number): [red: number, green: number, blue: number] => {
  const second = Math.floor(time);
  return [10 * second, 120, 250 - 10 * second];
};

const CUES: [from: number, to: number, text: string][] = [
  [0, 4, 'Watch a wave in deep water pass from left to right.'],
  [4, 8, 'A water particle moves in a circle, &amp; does not travel with the wave.'],
  [8, 13, '<v Lecturer>The radius of the circle falls off\nas <i>e</i> to the power of <i>kz</i>.'],
  [13, 18, 'Half a wavelength down, almost nothing moves.'],
  [18, 24, 'The speed of the wave is the square root of g over k.'],
];

const stamp = (seconds: number): string => `00:00:${String(seconds).padStart(2, '0')}.000`;

/** The captions as WebVTT. */
export const captions = `WEBVTT\n\n${CUES.map(
  ([from, to, text]) => `${stamp(from)} --> ${stamp(to)}\n${text}\n`,
).join('\n')}`;
