import type { Lesson } from '../types.ts';

const body = (): string => String.raw`<h2>Carry the water</h2>
<p>Forget slabs for a moment. Draw a square, one metre by one metre, on an imaginary floor at depth \(d\), and
ask a blunt question: what is standing on it? Answer: a column of sea, and on top of that a column of air. In
still water the floor has to hold up both.</p>
<div class="key" id="column-weight">
<p>Let \(s\) be the distance measured <strong>downwards</strong> from the surface. A layer between \(s\) and
\(s+\mathrm{d}s\) of a column with unit cross-section has mass \(\rho(s)\,\mathrm{d}s\) and weight
\(\rho(s)\,g\,\mathrm{d}s\). Add up the layers from the surface to the floor, and add the air:</p>
\[ p(d) = p_{\mathrm{atm}} + \int_0^d \rho(s)\,g\,\mathrm{d}s . \]
<p>Pressure at a depth is therefore the <em>weight of everything above one square metre</em>. Differentiate and
the same law appears in its local form, \(\mathrm{d}p/\mathrm{d}s = +\rho g\); the sign is positive because
\(s\) points down.</p>
</div>
<h2>Two layers</h2>
<p>A summer sea often has light water lying on heavier water. Suppose the top 50&nbsp;m has density
1024&nbsp;kg&nbsp;m<sup>&minus;3</sup> and the water below it 1028&nbsp;kg&nbsp;m<sup>&minus;3</sup>. Then at
200&nbsp;m</p>
\[ \begin{aligned}
p - p_{\mathrm{atm}} &= g\,(\rho_1 h_1 + \rho_2 h_2) \\
&= 9.81 \times (1024 \times 50 + 1028 \times 150) \\
&= 2.015 \times 10^{6}\ \mathrm{Pa}.
\end{aligned} \]
<p>That is 2.015&nbsp;MPa, or 201.5&nbsp;dbar. Adding one atmosphere (0.101&nbsp;MPa) gives 2.116&nbsp;MPa in
all.</p>
<blockquote>A pressure gauge on a sinking instrument is a weighing machine for the water it has passed.</blockquote>
<h2>Recipe</h2>
<ol>
<li>Mark the surface and the depth you want.</li>
<li>List the layers in between, with thickness \(h_i\) and density \(\rho_i\).</li>
<li>Sum \(\rho_i g h_i\).</li>
<li>Add \(p_{\mathrm{atm}}\) if the <em>absolute</em> pressure is asked for; leave it out for the pressure
<em>relative to the surface</em>.</li>
</ol>
<h2>Units in a line</h2>
<p>\(1\ \mathrm{bar} = 10^{5}\ \mathrm{Pa}\), \(1\ \mathrm{dbar} = 10^{4}\ \mathrm{Pa}\), and
\(1\ \mathrm{Pa} = 1\ \mathrm{N\,m^{-2}}\).</p>`;

export const pressureAndDepth: Lesson = {
  article: {
    path: '/quillhaven/pressure-and-depth',
    site: 'quillhaven',
    title: 'Pressure is the weight overhead',
    author: 'Odo Pallister-Finch',
    published: '2021-10-03',
    markup: 'katex',
    lede: 'A second way to see hydrostatic pressure: add up what stands on one square metre.',
    body,
    aside: String.raw`<h2>Common slip</h2>
<p>Two books may write \(\mathrm{d}p/\mathrm{d}z = -\rho g\) and \(\mathrm{d}p/\mathrm{d}z = +\rho g\). Both are
right: one measures \(z\) upwards, the other downwards. Look for the arrow.</p>`,
  },
  study: {
    topicCode: '2.1',
    passageSelector: '#column-weight',
    ownWords:
      'Pressure = weight of the whole column (water and air) standing on one square metre. ' +
      'Add up ρg ds going down. Sign is plus because s points down.',
    questions: [
      {
        prompt: 'Describe in words what the pressure at depth d in still water is equal to.',
        answer: 'The weight of all the water and air above one square metre at that depth.',
        marks: 1,
      },
      {
        prompt:
          'The top 50 m of the sea has density 1024 kg m⁻³ and the water below 1028 kg m⁻³. Calculate the ' +
          'pressure at 200 m relative to the surface. Take g = 9.81 m s⁻².',
        answer: '9.81 × (1024 × 50 + 1028 × 150) = 2.015 × 10⁶ Pa, or 201.5 dbar.',
        marks: 3,
      },
      {
        prompt: 'Why do some texts write dp/dz = +ρg?',
        answer: 'They measure z downwards from the surface, so pressure increases with z.',
        marks: 1,
      },
    ],
    lines: [{ lead: 'The pressure at depth d is the integral', rest: '\\(p_a + \\int_0^d \\rho g\\,ds\\).' }],
  },
};
