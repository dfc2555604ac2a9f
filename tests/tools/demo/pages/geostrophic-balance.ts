import { geostrophicFlow } from '../diagrams.ts';
import type { Lesson } from '../types.ts';

const body = (): string => String.raw`<h2>The turning of the Earth</h2>
<p>Seen from the rotating Earth, a moving parcel of water is pushed sideways: to its right in the northern
hemisphere, to its left in the southern. The strength of the push on a horizontal current is set by the
<strong>Coriolis parameter</strong>,</p>
\[ f = 2\Omega\sin\varphi , \qquad \Omega = 7.292\times10^{-5}\ \mathrm{s^{-1}}, \]
<p>where \(\varphi\) is the latitude. It is zero at the equator and negative south of it.</p>
<table>
<thead><tr><th scope="col">Latitude</th><th scope="col">\(f\) (10<sup>&minus;4</sup> s<sup>&minus;1</sup>)</th>
<th scope="col">Inertial period \(2\pi/f\) (h)</th></tr></thead>
<tbody><tr><td>10&deg; N</td><td>0.253</td><td>68.9</td></tr>
<tr><td>30&deg; N</td><td>0.729</td><td>23.9</td></tr>
<tr><td>50&deg; N</td><td>1.117</td><td>15.6</td></tr>
<tr><td>90&deg; N</td><td>1.458</td><td>12.0</td></tr></tbody>
</table>
<h2>Turned until it balances</h2>
<p>Water begins to run from high pressure to low. As it gathers speed it is turned, until the sideways push
exactly opposes the pressure force. From then on it flows <em>along</em> the lines of equal pressure.</p>
<figure>
${geostrophicFlow()}
<figcaption>Northern hemisphere, seen from above. Dashed lines join points of equal sea level. The high water
lies on the right of the current.</figcaption>
</figure>
<div id="balance">
<p>With \(x\) to the east and \(y\) to the north, and velocity components \(u\) and \(v\), the
<strong>geostrophic balance</strong> reads</p>
\[ f v = \frac{1}{\rho}\frac{\partial p}{\partial x}, \qquad f u = -\frac{1}{\rho}\frac{\partial p}{\partial y} . \]
<p>Near the surface the pressure differences come from the height \(\eta\) of the sea surface, through
\(p = \rho g(\eta - z)\) plus a constant. Then \(\partial p/\partial x = \rho g\,\partial\eta/\partial x\), and</p>
\[ v = \frac{g}{f}\frac{\partial \eta}{\partial x} . \]
</div>
<h2>Numbers</h2>
<p>Across a strong current at 38&deg;&nbsp;N the sea surface rises by 1.0&nbsp;m in 100&nbsp;km towards the east.
There \(f = 8.98\times10^{-5}\ \mathrm{s^{-1}}\), so</p>
\[ v = \frac{9.81}{8.98\times10^{-5}}\times\frac{1.0}{1.0\times10^{5}} = 1.09\ \mathrm{m\,s^{-1}} \]
<p>towards the north.</p>
<h2>When may it be trusted?</h2>
<ul>
<li>Away from the equator, where \(f\) is not small.</li>
<li>Away from the sea bed and from the wind-driven layer, where friction matters.</li>
<li>When the Rossby number \(\mathrm{Ro} = U/(fL)\) is small. In the example it is
\(1.09/(8.98\times10^{-5}\times10^{5}) \approx 0.12\).</li>
</ul>`;

export const geostrophicBalance: Lesson = {
  article: {
    path: '/quillhaven/geostrophic-balance',
    site: 'quillhaven',
    title: 'Currents that do not run downhill',
    author: 'Odo Pallister-Finch',
    published: '2021-11-17',
    markup: 'katex',
    lede: 'On a turning Earth a slow, large current keeps high water at its side, not behind it.',
    body,
    aside: String.raw`<h2>Memory aid</h2>
<p>Look along the current. Northern hemisphere: high pressure is on your right. Southern hemisphere, where
\(f \lt 0\): on your left.</p>`,
  },
  study: {
    topicCode: '5.2',
    passageSelector: '#balance',
    ownWords:
      'Pressure force and Coriolis force cancel, so water flows along lines of equal sea level. ' +
      'North: high on the right. v = (g/f) × slope of the surface.',
    questions: [
      {
        prompt: 'Explain why a geostrophic current does not flow from high pressure to low pressure.',
        answer:
          'The Coriolis force acts at right angles to the flow. In balance it is equal and opposite to the ' +
          'pressure force, so the flow is along lines of equal pressure.',
        marks: 3,
      },
      {
        prompt: 'At 38° N the sea surface rises 1.0 m over 100 km towards the east. Calculate the current.',
        answer: 'f = 8.98 × 10⁻⁵ s⁻¹; v = (g/f)(∂η/∂x) = 1.09 m s⁻¹, towards the north.',
        marks: 3,
      },
    ],
    lines: [
      { lead: 'The Coriolis parameter is', rest: 'f = 2Ω sin φ.' },
      { lead: 'In the northern hemisphere a geostrophic current has high pressure', rest: 'on its right.' },
    ],
  },
};
