/** Pictures that are drawn from the equations which they illustrate. */

const round = (value: number): string => value.toFixed(1);

const curve = (from: number, to: number, steps: number, y: (x: number) => number): string =>
  Array.from({ length: steps + 1 }, (_, i) => {
    const x = from + ((to - from) * i) / steps;
    return `${i === 0 ? 'M' : 'L'}${round(x)} ${round(y(x))}`;
  }).join('');

/** Two groups of a beat: the carrier within its envelope. */
export const waveGroup = (): string => {
  const envelope = (x: number): number => 50 * Math.abs(Math.sin((Math.PI * (x - 10)) / 250));
  const carrier = (x: number): number =>
    65 - 50 * Math.sin((Math.PI * (x - 10)) / 250) * Math.sin((2 * Math.PI * (x - 10)) / 32);
  const dashed = 'fill="none" stroke="#b3541e" stroke-dasharray="6 4"';
  return `<svg viewBox="0 0 520 130" width="520" height="130" role="img" aria-label="Wave groups in an envelope">
<path d="${curve(10, 510, 120, (x) => 65 - envelope(x))}" ${dashed}/>
<path d="${curve(10, 510, 120, (x) => 65 + envelope(x))}" ${dashed}/>
<path d="${curve(10, 510, 400, carrier)}" fill="none" stroke="#2b2118" stroke-width="2"/>
</svg>`;
};

const ellipse = (cx: number, cy: number, rx: number, ry: number): string =>
  `<ellipse cx="${round(cx)}" cy="${round(cy)}" rx="${round(rx)}" ry="${round(ry)}"/>`;

/** Orbits of water particles: circles that die away, and ellipses that only flatten. */
export const orbits = (): string => {
  const deep = [0, 1, 2, 3, 4].map((i) => {
    const radius = 22 * Math.exp(((-2 * Math.PI) / 180) * 30 * i);
    return ellipse(130, 45 + 30 * i, radius, radius);
  });
  const shallow = [0, 1, 2, 3].map((i) => ellipse(390, 45 + 18 * i, 40, 14 * (1 - i / 3.4)));
  return `<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 520 210" width="520" height="210">
<rect width="520" height="210" fill="#fdebd3"/>
<path d="M260 110H520V210H260z" fill="#c9a77c"/>
<path d="${curve(0, 250, 80, (x) => 45 - 22 * Math.cos((2 * Math.PI * (x - 130)) / 180))}" fill="none" stroke="#1f6f8b"/>
<path d="${curve(270, 520, 80, (x) => 45 - 14 * Math.cos((2 * Math.PI * (x - 390)) / 240))}" fill="none" stroke="#1f6f8b"/>
<g fill="none" stroke="#2b2118" stroke-width="1.5">${deep.join('')}${shallow.join('')}</g>
<g font-family="sans-serif" font-size="13" fill="#2b2118"><text x="20" y="200">deep: h &gt; λ/2</text>
<text x="290" y="200">shallow: h &lt; λ/20</text></g>
</svg>`;
};

const wavenumber = (period: number, depth: number, g = 9.81): number => {
  const omega = (2 * Math.PI) / period;
  let k = omega ** 2 / g;
  for (let i = 0; i < 200; i += 1) k = (k + omega ** 2 / (g * Math.tanh(k * depth))) / 2;
  return k;
};

/** The table that one lesson shows in a frame. */
export const depthTable = (): string => {
  const rows = [100, 50, 20, 10, 5, 2].map((depth) => {
    const k = wavenumber(8, depth);
    const cells = [depth, ((2 * Math.PI) / k).toFixed(1), ((2 * Math.PI) / 8 / k).toFixed(2)];
    return `<tr>${cells.map((cell) => `<td>${cell}</td>`).join('')}</tr>`;
  });
  return `<table><thead><tr><th>Depth (m)</th><th>Wavelength (m)</th><th>Phase speed (m/s)</th></tr></thead>
<tbody>${rows.join('')}</tbody></table>`;
};

/** Balance of forces and flow past a hill of water, northern hemisphere, seen from above. */
export const geostrophicFlow = (): string => `<svg viewBox="0 0 440 240" width="440" height="240" role="img"
 aria-label="Flow along lines of equal sea level with high water on its right">
<defs><marker id="tip" viewBox="0 0 8 8" refX="7" refY="4" markerWidth="7" markerHeight="7" orient="auto">
<path d="M0 0 8 4 0 8z"/></marker></defs>
<rect width="440" height="240" fill="#eef2fb"/>
<g stroke="#21409a" stroke-dasharray="5 4"><path d="M70 15V225"/><path d="M170 15V225"/><path d="M270 15V225"/>
<path d="M370 15V225"/></g>
<g stroke="#1b2333" stroke-width="2.5" marker-end="url(#tip)"><path d="M220 150V55"/><path d="M220 150H125"/>
<path d="M220 150H315"/></g>
<circle cx="220" cy="150" r="5" fill="#b3541e"/>
<g font-family="sans-serif" font-size="13" fill="#1b2333"><text x="228" y="62">current v</text>
<text x="82" y="176">pressure force</text><text x="250" y="176">Coriolis force</text><text x="14" y="30">low</text>
<text x="390" y="30">high</text><text x="14" y="225">west</text><text x="396" y="225">east</text></g>
</svg>`;

/** Arrows of the Ekman spiral for a wind up the page, northern hemisphere. */
export const spiral = (): string => {
  const arrows = Array.from({ length: 10 }, (_, i) => {
    const depth = 0.35 * i;
    const size = 190 * Math.exp(-depth);
    const angle = Math.PI / 4 - depth;
    const x = 110 + size * Math.cos(angle);
    const y = 170 - size * Math.sin(angle);
    return `<path d="M110 170L${round(x)} ${round(y)}"/><circle cx="${round(x)}" cy="${round(y)}" r="3"/>`;
  });
  return `<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 300 260" width="300" height="260">
<rect width="300" height="260" fill="#e6f3ec"/>
<path d="M50 170V40m-6 10 6-10 6 10" fill="none" stroke="#b3541e" stroke-width="3"/>
<g stroke="#175c4c" stroke-width="2" fill="#175c4c">${arrows.join('')}</g>
<g font-family="serif" font-size="14" fill="#17302b"><text x="30" y="190">wind</text>
<text x="232" y="78">surface</text></g>
</svg>`;
};
