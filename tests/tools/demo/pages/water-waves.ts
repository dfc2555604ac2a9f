import type { Lesson } from '../types.ts';

const body = (): string => String.raw`<h2>The relation</h2>
<p>A train of waves has a wavenumber \(k = 2\pi/\lambda\) and an angular frequency \(\omega = 2\pi/T\). On water
of depth \(h\) you may choose one of them, but not both: gravity and the sea bed fix the other.</p>
<section id="dispersion">
<p>For waves of small steepness on still water of uniform depth, with neither friction nor surface tension, the
<b>dispersion relation</b> is</p>
\[ \omega^2 = g k \tanh(kh). \]
<p>The phase speed follows from \(c = \omega/k\):</p>
\[ c = \sqrt{\frac{g}{k}\tanh(kh)} . \]
<p>Because \(c\) depends on \(k\), waves of different length travel at different speeds. A mixture of them
spreads out, or <i>disperses</i>, as it goes.</p>
</section>
<h2>Two limits</h2>
<p>The function \(\tanh x\) is close to \(x\) when \(x\) is small and close to 1 when \(x\) is large.</p>
<table>
<caption>The two limits of the dispersion relation</caption>
<thead><tr><th scope="col"></th><th scope="col">Deep water</th><th scope="col">Shallow water</th></tr></thead>
<tbody>
<tr><th scope="row">Condition</th><td>\(kh \gg 1\), in practice \(h > \lambda/2\)</td>
<td>\(kh \ll 1\), in practice \(h \lt \lambda/20\)</td></tr>
<tr><th scope="row">Relation</th><td>\(\omega^2 = gk\)</td><td>\(\omega^2 = ghk^2\)</td></tr>
<tr><th scope="row">Phase speed</th><td>\(c = \sqrt{g/k} = gT/2\pi\)</td><td>\(c = \sqrt{gh}\)</td></tr>
<tr><th scope="row">Dispersive?</th><td>Yes: long waves lead</td><td>No: all lengths travel alike</td></tr>
<tr><th scope="row">Error in \(c\) at the edge</th><td>about 0.2%</td><td>about 1.6%</td></tr>
</tbody>
</table>
<figure>
<img src="/lagoonery/orbits.svg" width="520" height="210" alt="Water moves in circles that shrink with depth in
deep water, and in flat ellipses in shallow water.">
<figcaption>Paths of water particles. Deep water on the left, shallow water on the right; not to
scale.</figcaption>
</figure>
<h2>Solving for k</h2>
<p>Given \(\omega\) and \(h\) the relation cannot be solved for \(k\) by algebra, but repeated substitution with a
little averaging settles quickly:</p>
<pre><code>const g = 9.81;
const omega = (2 * Math.PI) / 8; // a period of 8 s
const depth = 10; // metres
let k = omega ** 2 / g; // start from the deep-water value
for (let i = 0; i &lt; 50; i += 1) {
  const next = omega ** 2 / (g * Math.tanh(k * depth));
  k = (k + next) / 2;
}
console.log(k, (2 * Math.PI) / k); // 0.0886 per metre, 70.9 m
</code></pre>
<p>In deep water the same 8&nbsp;s wave would be \(gT^2/2\pi = 99.9\ \mathrm{m}\) long. Shallower water shortens
it and slows it, from \(12.5\) to \(8.86\ \mathrm{m\,s^{-1}}\).</p>
<iframe src="/lagoonery/depth-table" title="Wavelength of an 8 second wave at several depths"></iframe>`;

export const waterWaves: Lesson = {
  article: {
    path: '/lagoonery/water-waves',
    site: 'lagoonery',
    title: 'How water sets the speed of a wave',
    author: 'Brannoc Hythe-Umber',
    published: '2022-06-21',
    markup: 'mathjax-chtml',
    lede: 'One relation holds from chop in a harbour to swell over an abyss; here is how to read it.',
    body,
    aside: String.raw`<h2>Symbols</h2>
<dl><dt>\(k\)</dt><dd>wavenumber, \(\mathrm{rad\,m^{-1}}\)</dd>
<dt>\(\omega\)</dt><dd>angular frequency, \(\mathrm{rad\,s^{-1}}\)</dd>
<dt>\(h\)</dt><dd>depth of still water, m</dd></dl>`,
  },
  study: {
    topicCode: '3.2',
    passageSelector: '#dispersion',
    ownWords:
      'k and ω are tied together by gravity and depth: ω² = gk tanh(kh). Small waves, flat bottom, no friction. ' +
      'Different lengths go at different speeds = dispersive.',
    questions: [
      {
        prompt: 'State the dispersion relation for surface gravity waves on water of depth h.',
        answer: 'ω² = gk tanh(kh)',
        marks: 1,
      },
      {
        prompt: 'Give three conditions under which ω² = gk tanh(kh) holds.',
        answer: 'Small steepness; uniform depth; no friction (and no surface tension).',
        marks: 3,
      },
      {
        prompt: 'What does it mean to say that a wave is dispersive?',
        answer: 'Its phase speed depends on its wavenumber, so a mixture of waves spreads out as it travels.',
        marks: 2,
      },
    ],
    lines: [
      { lead: 'In deep water tanh(kh) is close to', rest: '1, so ω² = gk.' },
      { lead: 'In shallow water tanh(kh) is close to', rest: 'kh, so c = √(gh).' },
    ],
  },
};
