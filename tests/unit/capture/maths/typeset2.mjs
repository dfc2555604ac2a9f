// Typesets formulas with the published MathJax 2 in a simulated page, as it needs one. Arguments: the output
// ("CommonHTML", "SVG") and, for its MathML beside the drawing, "assistive". In: JSON [{ tex, display }]; out: JSON
// list of markup.
import { createRequire } from 'node:module';
import { dirname } from 'node:path';
import { text } from 'node:stream/consumers';
import { pathToFileURL } from 'node:url';
import { JSDOM, VirtualConsole } from 'jsdom';

const [, , output, assistive] = process.argv;
const jobs = JSON.parse(await text(process.stdin));
const folder = dirname(createRequire(import.meta.url).resolve('mathjax2/MathJax.js'));
const root = pathToFileURL(folder).href;
const { window } = new JSDOM('<!doctype html><body></body>', {
  url: `${root}/page.html`,
  runScripts: 'dangerously',
  resources: 'usable',
  pretendToBeVisual: true,
  // What MathJax cannot measure here it complains of, and goes on.
  virtualConsole: new VirtualConsole(),
});
const { document } = window;
for (const { tex, display } of jobs) {
  const holder = document.body.appendChild(document.createElement('div'));
  const script = document.createElement('script');
  script.type = display ? 'math/tex; mode=display' : 'math/tex';
  script.textContent = tex;
  holder.append(script);
}
const holders = [...document.body.children];
const done = new Promise((resolve) => {
  window.MathJax = {
    root,
    jax: ['input/TeX', `output/${output}`],
    extensions: assistive ? ['AssistiveMML.js'] : [],
    TeX: { extensions: ['AMSmath.js', 'AMSsymbols.js', 'noErrors.js', 'noUndefined.js'] },
    messageStyle: 'none',
    AuthorInit: () => window.MathJax.Hub.Register.StartupHook('End', resolve),
  };
});
const start = document.createElement('script');
start.src = `${root}/MathJax.js`;
document.head.append(start);
await done;
process.stdout.write(JSON.stringify(holders.map((holder) => holder.innerHTML)), () => process.exit());
