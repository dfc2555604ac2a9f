import { waveGroup } from '../diagrams.ts';
import type { Lesson } from '../types.ts';

const body = (): string => String.raw`<h2>Watch one crest</h2>
<p>Drop a stone in a pond and follow a single crest. It is born at the back of the ring, runs forward through
the group, and dies at the front. The group is slower than its crests. Energy goes with the group.</p>
<h2>Two waves together</h2>
<p>Add two waves of equal amplitude \(a\), with wavenumbers \(k \pm \Delta k\) and frequencies
\(\omega \pm \Delta\omega\):</p>
\[ \eta = 2a \cos(\Delta k\,x - \Delta\omega\,t)\cos(kx - \omega t). \]
<p>The first cosine is a slow envelope. It moves at \(\Delta\omega/\Delta k\), and in the limit of two very
similar waves this becomes a derivative.</p>
<section id="group">
<p>The <strong>group velocity</strong> is</p>
\[ c_g = \frac{\mathrm{d}\omega}{\mathrm{d}k} . \]
<p>For \(\omega^2 = gk\tanh(kh)\), differentiate both sides with respect to \(k\) and divide by \(2\omega\). With
\(c = \omega/k\) the result is</p>
\[ c_g = \frac{c}{2}\left( 1 + \frac{2kh}{\sinh 2kh} \right). \]
<p>In deep water the fraction tends to 0, so \(c_g = c/2\). In shallow water it tends to 1, so \(c_g = c\).</p>
</section>
<h2>Energy on the move</h2>
<p>A wave of amplitude \(a\) holds, on average over a wavelength, the energy per unit area of sea surface</p>
\[ E = \tfrac12 \rho g a^2 , \]
<p>half of it kinetic and half potential. The power that crosses each metre of crest is \(P = E c_g\).</p>
<figure>
${waveGroup()}
<figcaption>Crests (solid) run through the envelope (dashed), which moves at the group velocity.</figcaption>
</figure>
<h2>Worked example</h2>
<ol>
<li>Deep water, \(T = 8\ \mathrm{s}\): \(c = gT/2\pi = 12.5\ \mathrm{m\,s^{-1}}\), so
\(c_g = 6.25\ \mathrm{m\,s^{-1}}\).</li>
<li>With \(a = 1.0\ \mathrm{m}\) and \(\rho = 1025\ \mathrm{kg\,m^{-3}}\):
\(E = 5.03\ \mathrm{kJ\,m^{-2}}\).</li>
<li>\(P = E c_g \approx 31\ \mathrm{kW}\) for each metre of crest.</li>
</ol>
<h2>News from a storm</h2>
<p>A storm 3000 km away sends out swell of many periods at once. Each period arrives after
\(t = 4\pi x/(gT)\), the long ones first.</p>
<table>
<thead><tr><th scope="col">Period (s)</th><th scope="col">\(c_g\) (m/s)</th><th scope="col">Travel time</th></tr></thead>
<tbody><tr><td>16</td><td>12.5</td><td>2.8 days</td></tr>
<tr><td>10</td><td>7.81</td><td>4.4 days</td></tr>
<tr><td>8</td><td>6.25</td><td>5.6 days</td></tr></tbody>
</table>`;

export const groupVelocity: Lesson = {
  article: {
    path: '/lagoonery/group-velocity',
    site: 'lagoonery',
    title: 'Where the energy goes: group velocity',
    author: 'Brannoc Hythe-Umber',
    published: '2022-07-05',
    markup: 'mathjax-svg',
    lede: 'Crests are quick, but the energy of deep-water waves travels at half their pace.',
    body,
    aside: String.raw`<h2>Before this page</h2>
<p>You need <a href="/lagoonery/water-waves">the dispersion relation</a>, and the rule
\(\frac{\mathrm{d}}{\mathrm{d}x}\tanh x = \operatorname{sech}^2 x\).</p>`,
  },
  study: {
    topicCode: '3.4',
    passageSelector: '#group',
    ownWords:
      'Group velocity = slope of ω against k. Deep water: half the phase speed. Shallow water: the same as the ' +
      'phase speed. The energy goes at the group velocity.',
    questions: [
      { prompt: 'Define the group velocity.', answer: '\\(c_g = d\\omega/dk\\)', marks: 1 },
      {
        prompt: 'Starting from ω² = gk, show that in deep water the group velocity is half the phase speed.',
        answer: 'Differentiate: 2ω dω/dk = g, so dω/dk = g/(2ω) = ω/(2k) = c/2, using g = ω²/k.',
        marks: 3,
      },
      {
        prompt: 'Calculate the energy flux per metre of crest for a = 1.0 m, T = 8 s in deep water.',
        answer: 'E = ½ρga² = 5.03 kJ m⁻², c_g = gT/4π = 6.25 m s⁻¹, so P ≈ 31 kW m⁻¹.',
        marks: 3,
      },
    ],
    lines: [
      { lead: 'In deep water the group velocity is', rest: 'half the phase speed.' },
      { lead: 'The energy per unit area of a wave of amplitude a is', rest: 'E = ½ρga².' },
    ],
  },
};
