import { block, frac, inline, mi, mn, mo, row, sqrt, sup } from '../mathml.ts';
import type { Lesson } from '../types.ts';

const G = 9.81;
const DENSITY = 1027;
const OMEGA = 7.292e-5;
/** Bytes of text that the page is meant to reach. */
const TARGET = 2_000_000;

/** Three significant figures, in plain decimals where they are short and in powers of ten elsewhere. */
const figures = (value: number): string => {
  const [digits = '', exponent = '0'] = value.toExponential(2).split('e');
  const power = Number(exponent);
  if (power >= -2 && power <= 3)
    return power === 3 ? String(Number(value.toPrecision(3))) : value.toPrecision(3);
  return `${digits} × 10<sup>${power}</sup>`.replace('-', '−');
};

const pressure = (i: number): string => {
  const depth = 50 + ((i * 37) % 5900);
  const gauge = DENSITY * G * depth;
  return `A float that sinks to ${depth} m in water of uniform density ${DENSITY} kg m<sup>−3</sup> carries above
each square metre of its hull a column of sea that weighs ρgh = ${figures(gauge)} N. The pressure there, relative
to the surface, is therefore ${figures(gauge / 1e6)} MPa, or ${figures(gauge / 1e4)} dbar. Halve the depth and the
pressure of the water is halved as well, for the sum is linear as long as the density is the same at all depths.
In a real ocean the deeper water is slightly compressed, and the true value is a little larger.`;
};

const deepWave = (i: number): string => {
  const period = 4 + ((i * 13) % 140) / 10;
  const length = (G * period ** 2) / (2 * Math.PI);
  const speed = length / period;
  return `A swell with a period of ${period.toFixed(1)} s in deep water has the wavelength gT<sup>2</sup>/2π =
${figures(length)} m. Its crests advance at ${figures(speed)} m s<sup>−1</sup>, but the group that carries its
energy goes at half that speed, ${figures(speed / 2)} m s<sup>−1</sup>. The deep-water form may be used wherever the
depth is more than half a wavelength, which for this swell is ${figures(length / 2)} m; in shallower water the
bed is felt and the wave is shorter and slower.`;
};

const longWave = (i: number): string => {
  const depth = 20 + ((i * 71) % 5500);
  const speed = Math.sqrt(G * depth);
  return `A wave much longer than the depth moves at √(gh). Over a plain ${depth} m below the surface that comes to
${figures(speed)} m s<sup>−1</sup>, and such a wave would need ${figures(1e6 / speed / 3600)} hours to cross
1000 km. Its wavelength should be at least twenty times the depth, here ${figures((20 * depth) / 1000)} km, for the
formula to be right to within two per cent. All waves longer than that travel at nearly one speed, so the wave keeps its
shape as long as the bed is flat.`;
};

const rotation = (i: number): string => {
  const latitude = 5 + ((i * 17) % 81);
  const f = 2 * OMEGA * Math.sin((latitude * Math.PI) / 180);
  return `At latitude ${latitude}° N the Coriolis parameter is f = 2Ω sin φ = ${figures(f)} s<sup>−1</sup>, so that
water set moving and left alone turns clockwise through a full circle in ${figures((2 * Math.PI) / f / 3600)} hours.
A slope of the sea surface of one part in a million is there in balance with a current of g/f × 10<sup>−6</sup> =
${figures((G / f) * 1e-6)} m s<sup>−1</sup> along the lines of equal
level. At the same latitude in the other hemisphere f has the
opposite sign and the water turns anticlockwise.`;
};

const kinds = [pressure, deepWave, longWave, rotation];

const body = (): string => {
  const parts: string[] = [
    `<section id="opening"><p>The speed of a long wave depends on the depth alone,</p>
${block(mi('c'), mo('='), sqrt(mi('g'), mi('h')), mo(','))}
<p>and the period of a deep-water wave fixes its length,
${inline(mi('λ'), mo('='), frac(row(mi('g'), sup(mi('T'), mn(2))), row(mn(2), mi('π'))))}. The passages below work
through these and other rules with one set of numbers after another.</p></section>`,
  ];
  let size = 0;
  for (let i = 0; size < TARGET; i += 1) {
    if (i % 40 === 0) parts.push(`<h2>Part ${i / 40 + 1}</h2>`);
    const kind = kinds[i % kinds.length] ?? pressure;
    const text = `<p id="p${i + 1}">${i + 1}. ${kind(i)}</p>`;
    parts.push(text);
    size += Buffer.byteLength(text);
  }
  return parts.join('\n');
};

export const longText: Lesson = {
  article: {
    path: '/deep-water/long',
    site: 'deep-water',
    title: 'A very long reader of worked numbers',
    author: 'Ivo Marrable-Stane',
    published: '2020-12-01',
    markup: 'mathml',
    lede: 'Some two million characters of sums about the sea.',
    body,
    aside: '<p>There is no need to read it all.</p>',
  },
  study: {
    topicCode: '3.3',
    passageSelector: '#opening',
    ownWords: 'Long waves: speed from depth only, √(gh). Deep-water waves: length from period, gT²/2π.',
    questions: [
      {
        prompt: 'Calculate the speed of a long wave in water 4000 m deep.',
        answer: '√(9.81 × 4000) = 198 m s⁻¹',
        marks: 2,
      },
      {
        prompt: 'Calculate the wavelength of a deep-water wave with a period of 8.0 s.',
        answer: 'gT²/2π = 9.81 × 64/6.283 = 99.9 m',
        marks: 2,
      },
    ],
    lines: [{ lead: 'In shallow water the wave speed is', rest: 'c = √(gh).' }],
  },
};
