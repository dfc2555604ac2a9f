import { VIDEO } from '../video.ts';
import type { Lesson } from '../types.ts';

const body = (): string => `<h2>Orbits under a wave</h2>
<p>Watch the dots: each marks one bit of water.</p>
<video id="film" controls preload="auto" muted width="${2 * VIDEO.width}" height="${2 * VIDEO.height}"
 src="/lagoonery/orbits.webm">
<track kind="captions" srclang="en" label="English" src="/lagoonery/orbits.vtt" default>
</video>
<p>The film lasts ${VIDEO.seconds} seconds and has no sound.</p>`;

export const orbitFilm: Lesson = {
  article: {
    path: '/lagoonery/orbit-film',
    site: 'lagoonery',
    title: 'Orbits under a wave, filmed',
    author: 'Brannoc Hythe-Umber',
    published: '2023-05-04',
    markup: 'mathml',
    lede: 'A short film of what the water does while the wave goes by.',
    body,
    aside: '<p>Drawn from the equations of linear waves.</p>',
  },
};
