import { escapeHtml } from '../layout.ts';
import type { Lesson } from '../types.ts';

/** Equations that the site shows as pictures, with the TeX as alternative text. */
export const tideEquations = [
  String.raw`\frac{GM}{(d-r)^2} - \frac{GM}{d^2}`,
  String.raw`a_t \approx \frac{2GMr}{d^3}`,
  String.raw`\frac{a_{\mathrm{Sun}}}{a_{\mathrm{Moon}}} = \frac{M_{\mathrm{S}}}{M_{\mathrm{M}}}\left(\frac{d_{\mathrm{M}}}{d_{\mathrm{S}}}\right)^{3} \approx 0.46`,
  String.raw`d \gg r`,
  String.raw`(1 - r/d)^{-2} \approx 1 + 2r/d`,
];

const picture = (index: number, kind: 'eq' | 'eqi'): string =>
  `<img class="${kind}" src="/old-mole/eq/${index}.svg" alt="${escapeHtml(tideEquations[index] ?? '')}">`;

const body = (): string => `<ul>
<li><a href="#bulges">Why two bulges?</a></li>
<li><a href="#force">The force</a></li>
<li><a href="#sun">The Moon against the Sun</a></li>
</ul>
<h2 id="bulges">Why two bulges?</h2>
<p>The Moon pulls on every part of the Earth, but not equally. The Earth as a whole falls towards the Moon with
the acceleration proper to its centre. Water on the near side is pulled a little more than that, and water on the
far side a little less. Judged from the centre, then, the near water is drawn <i>towards</i> the Moon and the far
water is left behind, which amounts to being drawn <i>away</i>. Hence two bulges and, as the Earth turns, two high
waters in a lunar day of 24 h 50 min.</p>
<h2 id="force">The force</h2>
<div class="working">
<p>Let <var>M</var> be the mass of the Moon, <var>d</var> the distance between the centres, and <var>r</var> the
radius of the Earth. At the point nearest to the Moon the difference of the two pulls, per unit mass, is</p>
<p>${picture(0, 'eq')}</p>
<p>Since ${picture(3, 'eqi')} we may write ${picture(4, 'eqi')}, and so the <b>tide-generating acceleration</b>
is</p>
<p>${picture(1, 'eq')}</p>
<p>The far side gives the same size with the opposite direction. Note the <em>cube</em> of the distance: it is
the change of gravity across the Earth that counts, not gravity itself.</p>
</div>
<h2 id="sun">The Moon against the Sun</h2>
<table border="1">
<tr><th>Body</th><th>Mass (kg)</th><th>Distance (m)</th><th>2<i>GMr</i>/<i>d</i><sup>3</sup>
(m s<sup>&minus;2</sup>)</th></tr>
<tr><td>Moon</td><td>7.35 &times; 10<sup>22</sup></td><td>3.844 &times; 10<sup>8</sup></td>
<td>1.10 &times; 10<sup>&minus;6</sup></td></tr>
<tr><td>Sun</td><td>1.99 &times; 10<sup>30</sup></td><td>1.496 &times; 10<sup>11</sup></td>
<td>5.05 &times; 10<sup>&minus;7</sup></td></tr>
</table>
<p>(with <i>r</i> = 6.371 &times; 10<sup>6</sup> m and
<i>G</i> = 6.674 &times; 10<sup>&minus;11</sup> N m<sup>2</sup> kg<sup>&minus;2</sup>)</p>
<p>${picture(2, 'eq')}</p>
<p>The Moon's tidal acceleration is about one part in nine million of <i>g</i>. So small a force cannot lift the
sea directly. What matters is its part <em>along</em> the surface, which acts unopposed over whole oceans.</p>
<blockquote>New Moon and full Moon: Sun and Moon pull along one line, and the tides are large (springs). Half
Moon: they pull at right angles, and the tides are small (neaps).</blockquote>`;

export const tideForce: Lesson = {
  article: {
    path: '/old-mole/tide-force',
    site: 'old-mole',
    title: 'The force that raises the tide',
    author: 'Hesper Quennelby',
    published: '2009-09-12',
    markup: 'image-alt',
    lede: 'A difference of two pulls, and the cube of a distance.',
    body,
    aside: '<p><b>Next:</b> <a href="/old-mole/light-in-the-sea">how far does light go down?</a></p>',
  },
  study: {
    topicCode: '4.1',
    passageSelector: '.working',
    ownWords:
      'Tide force = pull at the surface minus pull at the centre of the Earth. Goes as M/d³, so the Moon wins ' +
      'over the Sun although the Sun is far heavier.',
    questions: [
      {
        prompt: 'Explain why there is a bulge on the side of the Earth away from the Moon.',
        answer:
          'Water there is pulled less than the centre of the Earth, so relative to the centre it is left behind, ' +
          'that is, accelerated away from the Moon.',
        marks: 2,
      },
      {
        prompt: 'Show that the tidal acceleration on the line of centres is about 2GMr/d³.',
        answer: 'GM/(d − r)² − GM/d² = (GM/d²)[(1 − r/d)⁻² − 1] ≈ (GM/d²)(2r/d) = 2GMr/d³.',
        marks: 3,
      },
      {
        prompt: 'How large is the tidal acceleration of the Sun compared with that of the Moon?',
        answer: 'About 0.46 of it.',
        marks: 1,
      },
    ],
    lines: [{ lead: 'The tide-generating acceleration falls off as', rest: 'the cube of the distance.' }],
  },
};
