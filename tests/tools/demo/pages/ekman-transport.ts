import {
  block,
  diff,
  fn,
  frac,
  inline,
  mi,
  mn,
  mo,
  paren,
  row,
  sqrt,
  sub,
  subsup,
  sup,
  unit,
} from '../mathml.ts';
import type { Lesson } from '../types.ts';

const [u, v, x, y, z, f, rho, tau, delta] = ['u', 'v', 'x', 'y', 'z', 'f', 'ρ', 'τ', 'δ'].map(mi) as [
  string,
  string,
  string,
  string,
  string,
  string,
  string,
  string,
  string,
];
const minus = mo('−');
const equals = mo('=');
const tauX = sub(tau, x);
const tauY = sub(tau, y);
const eddy = sub(mi('A'), z);
const partial = (of: string, by: string): string => frac(row(mo('∂'), of), row(mo('∂'), by));
const integral = subsup(mo('∫'), row(minus, mi('D')), mn(0));
const power = (exponent: string): string => sup(mn(10), row(minus, mn(exponent)));
const angle = paren(frac(mi('π'), mn(4)), mo('+'), frac(z, delta));
const decay = row(sub(mi('V'), mn(0)), sup(mi('e'), row(z, mo('/'), delta)));

const body = (): string => `<h2>Wind, rotation and friction</h2>
<p>The wind drags the top of the sea along. Each thin layer drags the layer below, and the Earth's rotation turns
them all. In a steady state, far from the coast, only two forces are left in each layer: the change of stress
across it, and the Coriolis force.</p>
<section id="transport">
<p>With ${inline(x)} to the east, ${inline(y)} to the north and ${inline(z)} upwards, the balance at each depth
is</p>
${block(minus, rho, f, v, equals, partial(tauX, z), mo(','), '<mspace width="1.5em"></mspace>', rho, f, u, equals, partial(tauY, z), mo('.'))}
<p>Integrate from a depth ${inline(mi('D'))}, where the stress has died away, up to the surface, where it equals
the wind stress. The mass carried by the whole layer, per metre of width, is the
<strong>Ekman transport</strong>:</p>
${block(sub(mi('M'), x), equals, integral, rho, u, mo('&#x2009;'), diff, z, equals, frac(tauY, f), mo(','), '<mspace width="1.5em"></mspace>', sub(mi('M'), y), equals, integral, rho, v, mo('&#x2009;'), diff, z, equals, minus, frac(tauX, f), mo('.'))}
<p>It is at right angles to the wind: to the right of it where ${inline(f, mo('&gt;'), mn(0))} and to the left
where ${inline(f, mo('&lt;'), mn(0))}. How friction works inside the layer makes no difference.</p>
</section>
<h2>The spiral</h2>
<p>To see each depth one needs a rule for friction. With a constant eddy viscosity ${inline(eddy)} and a wind
towards the north in the northern hemisphere,</p>
${block(u, equals, decay, fn('cos', angle), mo(','), '<mspace width="1.5em"></mspace>', v, equals, decay, fn('sin', angle), mo(','))}
<p>where ${inline(delta, equals, sqrt(mn(2), eddy, mo('/'), f))} and
${inline(sub(mi('V'), mn(0)), equals, tau, mo('/'), paren(rho, sqrt(eddy, f)))}. At the surface the current points
45&deg; to the right of the wind; below, it turns further and fades.</p>
<figure>
<img src="/ebbledore/spiral.svg" width="300" height="260" alt="Arrows seen from above, turning clockwise and
shrinking with depth.">
<figcaption>The current at equal steps of depth, seen from above. The wind blows up the page.</figcaption>
</figure>
<h2>Typical sizes</h2>
<dl>
<dt>Wind stress</dt><dd>${inline(tau, equals, mn('0.1'), unit('N m'), sup('<mtext></mtext>', mn('−2')))}, from a wind of
about 8 m s<sup>&minus;1</sup>.</dd>
<dt>Mass transport</dt><dd>at ${inline(f, equals, power('4'), unit('s'), sup('<mtext></mtext>', mn('−1')))} it is
1000 kg per second for each metre of width.</dd>
<dt>Volume transport</dt><dd>dividing by 1025 kg m<sup>&minus;3</sup> gives
0.98 m<sup>2</sup> s<sup>&minus;1</sup>.</dd>
<dt>Depth of the layer</dt><dd>${inline(mi('π'), delta)}, about 44 m for
${inline(eddy, equals, mn('0.01'))} m<sup>2</sup> s<sup>&minus;1</sup>.</dd>
</dl>
<h2>Upwelling at a coast</h2>
<ol>
<li>The wind blows along a coast, with the land on its left (northern hemisphere).</li>
<li>The transport is to the right, so surface water leaves the shore.</li>
<li>Cold water from below comes up to replace it.</li>
</ol>`;

export const ekmanTransport: Lesson = {
  article: {
    path: '/ebbledore/ekman-transport',
    site: 'ebbledore',
    title: 'The wind pushes, the water goes sideways',
    author: 'Sefa Lindqvarn',
    published: '2023-05-30',
    markup: 'mathml',
    lede: 'Why the layer that the wind stirs is carried at right angles to the wind.',
    body,
    aside: `<h2>Try it</h2><p>A wind stress of 0.1 N m<sup>&minus;2</sup> blows along 200 km of coast, where
${inline(f, equals, power('4'), unit('s'), sup('<mtext></mtext>', mn('−1')))}. What volume leaves the shore each second?</p>
<p>About ${inline(mn('0.98'), mo('×'), mn(2), mo('×'), sup(mn(10), mn(5)), mo('≈'), mn(2), mo('×'), sup(mn(10), mn(5)))}
m<sup>3</sup>.</p>`,
  },
  study: {
    topicCode: '5.3',
    passageSelector: '#transport',
    ownWords:
      'Add up the current over the whole wind-stirred layer: friction drops out. Transport = stress / f, ' +
      '90° to the right of the wind in the north, to the left in the south.',
    questions: [
      {
        prompt: 'State the direction of the Ekman transport relative to the wind in each hemisphere.',
        answer: '90° to the right of the wind in the northern hemisphere, 90° to the left in the southern.',
        marks: 2,
      },
      {
        prompt: 'Calculate the Ekman mass transport for a wind stress of 0.1 N m⁻² where f = 1.0 × 10⁻⁴ s⁻¹.',
        answer: 'τ/f = 0.1 / 1.0 × 10⁻⁴ = 1000 kg m⁻¹ s⁻¹.',
        marks: 2,
      },
      {
        prompt: 'Explain how a wind along a coast can cause upwelling (northern hemisphere).',
        answer:
          'With land on the left of the wind the transport, to the right, is away from the shore. ' +
          'Water rises from below to replace it.',
        marks: 3,
      },
    ],
    lines: [{ lead: 'The size of the Ekman mass transport per unit width is', rest: 'τ / f.' }],
  },
};
