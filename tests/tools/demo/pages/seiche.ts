import type { Lesson } from '../types.ts';

const body = (): string => String.raw`<h2>A basin has a favourite period</h2>
<p>Tip a bath of water and let go: the surface rocks to and fro. A lake or a gulf does the same, far more slowly.
Such a standing wave is called a <em>seiche</em>. It is long compared with the depth, so its waves travel at
\(c = \sqrt{gh}\).</p>
<section id="periods">
<p>In a closed basin of length \(L\) no water can flow through either end. The longest standing wave that fits has
\(\lambda = 2L\), and its period is</p>
\[ T = \frac{2L}{\sqrt{gh}} . \]
<p>A gulf that opens on to a deep sea has still water level at its mouth and the largest rise and fall at its
head. A quarter of a wave fits, \(\lambda = 4L\), and</p>
\[ T = \frac{4L}{\sqrt{gh}} . \]
</section>
<h2>Example</h2>
<p>For \(L = 8\ \mathrm{km}\) and \(h = 20\ \mathrm{m}\), \(c = 14.0\ \mathrm{m\,s^{-1}}\). Closed, the basin rocks
with a period of 19 minutes; open at one end, with one of 38 minutes. A gulf whose period is near 12.4 hours
answers strongly to the tide.</p>`;

export const seiche: Lesson = {
  article: {
    path: '/lagoonery/seiche',
    site: 'lagoonery',
    title: 'Basins that ring: seiches and resonance',
    author: 'Brannoc Hythe-Umber',
    published: '2022-09-19',
    markup: 'mathjax-live',
    lede: 'Why one gulf has huge tides and its neighbour hardly any.',
    body,
    aside: String.raw`<p>This page leaves its maths to a script in the browser.</p>`,
  },
  study: {
    topicCode: '4.3',
    passageSelector: '#periods',
    ownWords: 'Closed basin: half a wave fits, T = 2L/√(gh). Open gulf: a quarter fits, T = 4L/√(gh).',
    questions: [
      {
        prompt: 'State the period of the lowest seiche in a closed basin of length L and depth h.',
        answer: 'T = 2L/√(gh)',
        marks: 1,
      },
      {
        prompt: 'Calculate the resonant period of a gulf, open at one end, 8 km long and 20 m deep.',
        answer: '√(gh) = 14.0 m s⁻¹; T = 4L/√(gh) = 2285 s, about 38 minutes.',
        marks: 3,
      },
    ],
    lines: [
      { lead: 'In a gulf that is open at one end the lowest mode holds', rest: 'a quarter of a wave.' },
    ],
  },
};
