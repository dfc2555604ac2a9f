import type { SiteKey } from './types.ts';

export interface Site {
  name: string;
  motto: string;
  /** Wording of the licence; a site without one grants nothing. */
  licence?: string;
  /** Class of the element that wraps the article. */
  wrap: string;
  css: string;
}

const base = `*{box-sizing:border-box}
body{margin:0;line-height:1.6}
img,svg{max-width:100%}
math{font-family:'Latin Modern Math','STIX Two Math','Cambria Math','DejaVu Math TeX Gyre',math}
table{border-collapse:collapse;margin:1em 0}
th,td{border:1px solid #0003;padding:.3em .7em;text-align:left}
pre{overflow:auto;padding:.8em;font-size:.9em}
figure{margin:1.5em 0}
figcaption{font-size:.88em;opacity:.85}
nav ul{list-style:none;margin:0;padding:0;display:flex;flex-wrap:wrap;gap:.4em 1.2em}
@media(max-width:700px){.frame{display:block!important}}
`;

export const sites: Record<SiteKey, Site> = {
  ebbledore: {
    name: 'Ebbledore Lessons',
    motto: 'Physics of the sea, one step at a time',
    licence: 'You may copy and adapt this lesson if you name its author and the Ebbledore Lessons.',
    wrap: 'lesson',
    css: `body{font-family:Georgia,'DejaVu Serif',serif;background:#fbfdf9;color:#17302b}
header{background:#175c4c;color:#fff;padding:1.2em 6vw}header a{color:#d8fff0}
.frame{display:grid;grid-template-columns:minmax(0,1fr) 15em;gap:3em;padding:1.5em 6vw;max-width:76em}
h1{font-size:2em;line-height:1.2}h2{border-bottom:2px solid #9fd3bf;color:#175c4c}
aside{border-left:4px solid #9fd3bf;padding-left:1em;font-size:.92em}
blockquote{font-style:italic;border-left:3px solid #175c4c;margin-left:0;padding-left:1em}
math[display=block]{margin:1em 0}
footer{padding:1.5em 6vw;background:#e6f3ec;font-size:.85em}`,
  },
  quillhaven: {
    name: 'Quillhaven Harbour Notes',
    motto: 'Lecture notes from the end of the pier',
    wrap: 'post',
    css: `body{font-family:Verdana,'DejaVu Sans',sans-serif;font-size:15px;background:#dfe7f1;color:#1b2333}
header{background:#fff;border-top:8px solid #21409a;padding:1em 2em;text-align:center}header a{color:#21409a}
nav ul{justify-content:center}
.frame{max-width:62em;margin:1.5em auto;display:block}
article{background:#fff;border-radius:10px;padding:1.5em 3em;box-shadow:0 1px 6px #0002}
h1{color:#21409a}aside{background:#fffbe6;border-radius:10px;padding:1em 3em;margin-top:1em}
blockquote{background:#eef2fb;margin:1em 0;padding:.8em 1.2em;border-radius:8px}
footer{text-align:center;font-size:.8em;padding:1em}`,
  },
  lagoonery: {
    name: 'The Lagoonery',
    motto: 'Waves, worked out',
    licence: 'The Lagoonery lends its pages freely for study; say where they came from.',
    wrap: 'chapter',
    css: `body{font-family:'Trebuchet MS','DejaVu Sans Condensed',sans-serif;background:#fff8f0;color:#2b2118}
header{background:linear-gradient(90deg,#b3541e,#e0a458);color:#fff;padding:1.6em 8vw}header a{color:#fff}
.frame{display:grid;grid-template-columns:14em minmax(0,1fr);gap:2.5em;padding:1.5em 8vw}
.frame aside{order:-1;background:#fdebd3;padding:1em;border-radius:4px;align-self:start;font-size:.92em}
h1{font-weight:400;font-size:2.3em;margin-top:0}h2{color:#b3541e}
th{background:#fdebd3}pre{background:#2b2118;color:#fdebd3}
iframe{border:1px solid #e0a458;width:100%;height:360px}
footer{border-top:1px solid #e0a458;margin:0 8vw;padding:1em 0;font-size:.85em}`,
  },
  'old-mole': {
    name: 'The Old Mole Pages',
    motto: 'Sea science since the days of small screens',
    wrap: 'sheet',
    css: `body{font-family:'Times New Roman','DejaVu Serif',serif;background:#f2efe6;color:#111}
header{padding:.6em 1em;border-bottom:3px double #555}header a{color:#00c}
.frame{padding:0 1em;max-width:52em}h1{font-size:1.7em}
img.eq{display:block;margin:1em 2em}img.eqi{vertical-align:-.2em}
.frame aside{border:1px solid #888;background:#fffef4;padding:.2em 1em}
pre{background:#fff;border:1px solid #aaa}.formula{margin-left:2em}dt{font-weight:700}
footer{padding:1em;border-top:3px double #555;font-size:.85em}`,
  },
  'rough-water': {
    name: 'Rough Water Board',
    motto: 'Posts by anyone, checked by no one',
    wrap: 'thread',
    css: `body{font-family:'DejaVu Sans Mono',monospace;font-size:14px;background:#222;color:#dfe}
a{color:#7df}header,footer{padding:1em 2em;background:#111}
.frame{padding:1em 2em;max-width:70em}article{background:#2d2d2d;padding:1em 2em;border-radius:6px}
input,button{font:inherit}`,
  },
  'deep-water': {
    name: 'Deep Water Reader',
    motto: 'Long reading for long crossings',
    wrap: 'scroll',
    css: `body{font-family:Georgia,'DejaVu Serif',serif;max-width:46em;margin:auto;padding:0 1em}`,
  },
  'far-shore': {
    name: 'Far Shore',
    motto: 'Short lessons in other scripts',
    licence: 'Far Shore lessons may be copied for teaching.',
    wrap: 'leaf',
    css: `body{font-family:'DejaVu Sans',sans-serif;background:#f6f3fb;color:#221a33}
header,footer{padding:1em 2em;background:#e4dcf4}.frame{padding:1em 2em;max-width:48em}h1{color:#4b2e83}`,
  },
};

export const siteCss = (key: SiteKey): string => base + sites[key].css;
