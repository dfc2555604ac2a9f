import { waveGroup } from '../diagrams.ts';
import type { Lesson } from '../types.ts';

// One picture of another site, whose pixels this page may not read: the site is named in the address.
const script = `<script>
addEventListener('DOMContentLoaded', () => {
  const pen = document.querySelector('#drawn').getContext('2d');
  pen.fillStyle = '#175c4c';
  pen.fillRect(0, 0, 120, 80);
  pen.fillStyle = '#f2c14e';
  pen.fillRect(60, 0, 60, 80);
  const other = new URLSearchParams(location.search).get('other');
  if (other) document.querySelector('#foreign').src = other + '/ebbledore/pattern.png';
});
</script>
<style>
#waves path { stroke: #b3541e; stroke-width: 3; fill: none; }
#waves text { font: 14px sans-serif; fill: #17302b; }
</style>`;

const body = (): string => `${script}
<h2>Reading a picture of waves</h2>
<section id="with-pictures">
<p>The colours below stand for depth: the deeper the water, the further down the row.</p>
<figure id="pattern-figure"><img id="pattern" src="/ebbledore/pattern.png" alt="Depth by colour, six columns of four"
 width="240" height="160"><figcaption>Depth of water along six sections of the shelf</figcaption></figure>
<p>A wave train <svg id="waves" width="160" height="60" viewBox="0 0 160 60" role="img"><title>A train of waves</title>
<path d="M0 30 Q10 0 20 30 T40 30 T60 30 T80 30 T100 30 T120 30 T140 30 T160 30"/><text x="50" y="56">crests</text></svg>
and its two halves <canvas id="drawn" width="120" height="80" aria-label="Two halves of a wave"></canvas> are drawn.</p>
<p>Small signs <img src="/ebbledore/pattern.png" alt="sign" width="16" height="16"> stay words, and ornaments
<img src="/ebbledore/pattern.png" alt="" width="30" height="30"> go.</p>
</section>
<h2>A picture from elsewhere</h2>
<section id="from-elsewhere">
<p>This one lies on another site:</p>
<p><img id="foreign" alt="Depth by colour, kept elsewhere" width="240" height="160"></p>
<p>Far above it stands the first picture.</p>
</section>
<h2>Groups of waves</h2>
<figure id="group">${waveGroup()}</figure>
<p style="height:900px">Below this line the shelf ends.</p>
<p id="alone"><img src="/ebbledore/pattern.png" alt="" width="240" height="160"></p>`;

export const wavePictures: Lesson = {
  article: {
    path: '/ebbledore/wave-pictures',
    site: 'ebbledore',
    title: 'Pictures of waves',
    author: 'Tamsin Orrelby',
    published: '2024-02-11',
    markup: 'mathml',
    lede: 'What the colours and lines in a drawing of the sea stand for.',
    body,
    aside: '<p>Every picture here may be copied.</p>',
  },
};
