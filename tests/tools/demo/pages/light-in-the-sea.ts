import type { Lesson } from '../types.ts';

const body =
  (): string => `<p>Swim down ten metres and red things look grey. Water takes up red light within a few
metres; blue goes deepest. For one colour the rule is simple.</p>
<h2>The exponential law</h2>
<div id="law">
<p>In each metre the water removes the <i>same fraction</i> of what is left. If <i>I</i><sub>0</sub> is the
downward irradiance just below the surface, then at a depth <i>z</i></p>
<p class="formula"><i>I</i>(<i>z</i>) = <i>I</i><sub>0</sub> e<sup>&minus;<i>Kz</i></sup></p>
<p>where <i>K</i>, in m<sup>&minus;1</sup>, is the <dfn>diffuse attenuation coefficient</dfn>. To find the depth
at which a fraction <i>F</i> remains, take logarithms:
<i>z</i><sub><i>F</i></sub> = &minus;(ln <i>F</i>) / <i>K</i>.</p>
</div>
<h2>Terms</h2>
<dl>
<dt>Irradiance, <i>I</i></dt>
<dd>Power of the light that falls on one square metre, in W m<sup>&minus;2</sup>.</dd>
<dt>Absorption</dt>
<dd>Light turned into heat or used by living cells.</dd>
<dt>Scattering</dt>
<dd>Light sent off in a new direction by water and by particles.</dd>
<dt>Euphotic zone</dt>
<dd>The layer with enough light for plants to grow. Its floor is often taken at 1% of <i>I</i><sub>0</sub>.</dd>
</dl>
<h2>How deep?</h2>
<table border="1">
<tr><th>Water</th><th><i>K</i> (m<sup>&minus;1</sup>)</th><th><i>z</i><sub>10%</sub> (m)</th>
<th><i>z</i><sub>1%</sub> (m)</th></tr>
<tr><td>Very clear ocean, blue light</td><td>0.03</td><td>77</td><td>154</td></tr>
<tr><td>Clear shelf sea</td><td>0.1</td><td>23</td><td>46</td></tr>
<tr><td>Muddy estuary</td><td>0.5</td><td>4.6</td><td>9.2</td></tr>
</table>
<p>The last two columns always stand in the ratio 1 : 2, because 1% is 10% of 10%.</p>
<h2>In code</h2>
<pre><code class="language-js">const depthOf = (fraction, K) =&gt; -Math.log(fraction) / K;
depthOf(0.01, 0.5).toFixed(1); // '9.2'
</code></pre>
<p>Carbon enters this story too: in the lit layer, CO<sub>2</sub> + H<sub>2</sub>O is built into sugars and
O<sub>2</sub> is set free.</p>
<hr>
<p><small>Values of <i>K</i> are round figures for exercises, not measurements.</small></p>`;

export const lightInTheSea: Lesson = {
  article: {
    path: '/old-mole/light-in-the-sea',
    site: 'old-mole',
    title: 'How far does light go down?',
    author: 'Hesper Quennelby',
    published: '2010-04-25',
    markup: 'sub-sup',
    lede: 'The same fraction is lost in every metre.',
    body,
    aside: '<p><b>Back:</b> <a href="/old-mole/tide-force">the force that raises the tide</a></p>',
  },
  study: {
    topicCode: '6.1',
    passageSelector: '#law',
    ownWords:
      'Each metre takes the same fraction of the light, so it dies away exponentially with constant K.',
    questions: [
      {
        prompt: 'State the law by which the irradiance of one colour falls with depth.',
        answer: 'I(z) = I₀ e^(−Kz)',
        marks: 1,
      },
      {
        prompt: 'Calculate the depth of the 1% level in water with K = 0.10 m⁻¹.',
        answer: 'z = (ln 100)/K = 4.605/0.10 = 46 m.',
        marks: 2,
      },
      {
        prompt: 'Why is the 1% depth twice the 10% depth?',
        answer: '1% is 10% of 10%: equal fractions are lost over equal depths (ln 100 = 2 ln 10).',
        marks: 1,
      },
    ],
    lines: [
      { lead: 'The depth at which a fraction F of the light is left is', rest: 'z = −(ln F)/K.' },
      { lead: 'The floor of the euphotic zone is often taken at', rest: '1% of the surface light.' },
    ],
  },
};
