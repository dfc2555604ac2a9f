/** Plain enough for any browser, light or dark, and for paper. It loads nothing. */
export const PAGE_STYLE = `:root { color-scheme: light dark; --line: #8888; }
body { margin: 0; font: 16px/1.5 system-ui, sans-serif; }
main { max-width: 48rem; margin: 2rem auto; padding: 0 1rem; }
h1, h2, h3, h4, h5, h6 { margin: 1.4em 0 0.4em; line-height: 1.25; break-after: avoid; }
main > h1 { margin-top: 0; }
li, p, dt, dd, blockquote { overflow-wrap: anywhere; }
li { margin: 0.2em 0; }
li.bare { list-style: none; }
dt { margin-top: 0.8em; font-weight: 600; }
dd { margin: 0.2em 0 0 1.2em; }
small { font-weight: 400; }
article { margin: 1.2em 0; padding-bottom: 0.6em; border-bottom: 1px solid var(--line); break-inside: avoid; }
blockquote { margin: 0 0 0.6em; padding-inline-start: 1em; border-inline-start: 3px solid var(--line); }
blockquote > :first-child { margin-top: 0; }
blockquote :is(h1, h2, h3, h4, h5, h6) { margin: 0.8em 0 0.2em; font-size: 1em; }
figure { margin: 0.4em 0; }
.from { font-size: 0.85em; }
img { display: block; max-width: 100%; max-height: 40rem; width: auto; height: auto; margin: 0.4em 0; background: #fff; }
table { display: block; max-width: 100%; overflow-x: auto; border-collapse: collapse; }
th, td { padding: 0.2em 0.6em; border: 1px solid var(--line); text-align: start; }
pre { overflow-x: auto; }
math[display='block'] { max-width: 100%; overflow: auto hidden; }
@media print { main { margin: 0; max-width: none; } }`;
