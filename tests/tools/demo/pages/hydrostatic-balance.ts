import { block, diff, frac, inline, mi, mn, mo, paren, row, sub, unit } from '../mathml.ts';
import type { Lesson } from '../types.ts';

const p = mi('p');
const z = mi('z');
const rho = mi('ρ');
const g = mi('g');
const area = mi('A');
const dz = row(mi('δ'), z);
const atmosphere = sub(p, mi('a'));
const power = (exponent: number): string => `<msup>${mn(10)}${mn(exponent)}</msup>`;

const slab = `<figure>
<svg viewBox="0 0 420 230" width="420" height="230" role="img" aria-label="Forces on a thin slab of water">
<rect width="420" height="230" fill="#d6efe6"/>
<rect x="120" y="90" width="180" height="50" fill="#8cc7b3" stroke="#175c4c"/>
<g stroke="#17302b" stroke-width="2" fill="#17302b" font-size="14" font-family="serif">
<path d="M170 40v42m-5-8 5 8 5-8" fill="none"/><text x="182" y="58" stroke="none">p(z + δz)A</text>
<path d="M170 192v-44m-5 8 5-8 5 8" fill="none"/><text x="182" y="180" stroke="none">p(z)A</text>
<path d="M250 115v62m-5-8 5 8 5-8" fill="none"/><text x="260" y="170" stroke="none">ρgA δz</text>
<path d="M60 205V30m-5 8 5-8 5 8" fill="none"/><text x="38" y="38" stroke="none">z</text>
<path d="M310 90h24M310 140h24" fill="none"/><text x="340" y="120" stroke="none">δz</text></g></svg>
<figcaption>A slab of thickness δz at rest. The push from below exceeds the push from above by exactly the
weight of the slab.</figcaption>
</figure>`;

const body = (): string => `<h2>One slab at a time</h2>
<p>Picture still water, and measure height ${inline(z)} <em>upwards</em>. Choose a flat slab of area
${inline(area)} and small thickness ${inline(dz)}. Nothing in the picture accelerates, so the three vertical
forces on the slab must add up to zero.</p>
${slab}
<section id="force-balance">
<p>The water below pushes up with ${inline(p, paren(z), area)}, the water above pushes down with
${inline(p, paren(z, mo('+'), dz), area)}, and the slab itself weighs ${inline(rho, g, area, dz)}. Balance
requires</p>
${block(p, paren(z), area, mo('−'), p, paren(z, mo('+'), dz), area, mo('='), rho, g, area, dz, mo('.'))}
<p>Divide by ${inline(area, dz)} and let the slab become very thin. What is left is the
<strong>hydrostatic balance</strong>:</p>
${block(frac(row(diff, p), row(diff, z)), mo('='), mo('−'), rho, g, mo('.'))}
<p>The minus sign says only that pressure falls as one goes up. The area has cancelled, so the shape of the
vessel, or of the sea bed, plays no part.</p>
</section>
<h2>From slope to pressure</h2>
<p>If the density is the same at all depths, the slope is constant. Starting from the atmospheric pressure
${inline(atmosphere)} at the surface, the pressure at a depth ${inline(mi('h'))} is</p>
${block(p, mo('='), atmosphere, mo('+'), rho, g, mi('h'), mo('.'))}
<blockquote><p>Each metre of sea water adds about ten thousand pascals. A diver feels one more atmosphere for
every ten metres.</p></blockquote>
<h2>How large is it?</h2>
<p>With ${inline(rho, mo('='), mn(1025), unit('kg m'), '<msup><mtext></mtext><mn>−3</mn></msup>')} and
${inline(g, mo('='), mn('9.81'), unit('m s'), '<msup><mtext></mtext><mn>−2</mn></msup>')} the part due to the
water alone is:</p>
<table>
<thead><tr><th scope="col">Depth (m)</th><th scope="col">${inline(rho, g, mi('h'))} (MPa)</th>
<th scope="col">In decibars</th></tr></thead>
<tbody>
<tr><td>10</td><td>0.1006</td><td>10.06</td></tr>
<tr><td>100</td><td>1.006</td><td>100.6</td></tr>
<tr><td>1000</td><td>10.06</td><td>1006</td></tr>
<tr><td>4000</td><td>40.2</td><td>4022</td></tr>
</tbody>
</table>
<p>A decibar is ${inline(power(4), unit('Pa'))}, which is why seagoing people read decibars almost as metres. At
4000 m the true figure is about one per cent more than the table says, because deep water is slightly
compressed and so a little denser.</p>
<h2>What it rests on</h2>
<ul>
<li>The water is at rest, or its vertical acceleration is tiny compared with ${inline(g)}.</li>
<li>Pressure acts equally in all directions at a point.</li>
<li>Nothing has been said about temperature: it enters through ${inline(rho)} only.</li>
</ul>`;

export const hydrostaticBalance: Lesson = {
  article: {
    path: '/ebbledore/hydrostatic-balance',
    site: 'ebbledore',
    title: 'Why pressure grows with depth',
    author: 'Wenna Trescothal',
    published: '2023-02-14',
    markup: 'mathml',
    lede: 'Three forces on a thin slab of still water give the most useful equation in the sea.',
    body,
    aside: `<h2>Check yourself</h2>
<p>At what depth is the total pressure twice that of the air above? Take
${inline(atmosphere, mo('='), mn('1.013'), mo('×'), power(5), unit('Pa'))}.</p>
<p>Answer: where ${inline(rho, g, mi('h'), mo('='), atmosphere)}, about 10.1 m.</p>`,
  },
  study: {
    topicCode: '2.1',
    passageSelector: '#force-balance',
    ownWords:
      'Cut out a thin slab. Push from below minus push from above = weight of the slab. Divide by area and ' +
      'thickness: dp/dz = −ρg with z upwards. Area cancels, so the shape of the tank is irrelevant.',
    questions: [
      {
        prompt: 'Name the three vertical forces on a thin slab of still water of area A and thickness δz.',
        answer: 'p(z)A upwards from below; p(z + δz)A downwards from above; the weight ρgA δz downwards.',
        marks: 3,
      },
      {
        prompt: 'State the hydrostatic balance for z measured upwards.',
        answer: 'dp/dz = −ρg',
        marks: 1,
      },
      {
        prompt: 'Why does the shape of the container not matter?',
        answer: 'Every term is proportional to the area A, so A cancels and only ρ, g and z remain.',
        marks: 2,
      },
    ],
    lines: [
      { lead: 'In still water, with z upwards,', rest: 'dp/dz = −ρg.' },
      { lead: 'For uniform density the pressure at depth h is', rest: 'p = pₐ + ρgh.' },
    ],
  },
};
