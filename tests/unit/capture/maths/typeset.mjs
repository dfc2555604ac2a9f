// Typesets formulas with a published MathJax, in a process of its own: it looks for a browser around it, and a test's
// simulated page would mislead it. Argument: "mathjax" (version 4) or "mathjax3". In: JSON [{ tex, display, output:
// "chtml" | "svg", assistive }]; out: JSON list of markup, null where it cannot go on. As in pages, a command that it
// does not know is drawn in red.
import { createRequire } from 'node:module';
import { text } from 'node:stream/consumers';

const name = process.argv[2];
const jobs = JSON.parse(await text(process.stdin));
// Version 3 loads what else it needs of TeX only in a page, and its page adaptor by itself.
const parts = name === 'mathjax3' ? ['input/tex-full'] : ['input/tex', 'adaptors/liteDOM'];
const MathJax = await createRequire(import.meta.url)(name).init({
  loader: { load: [...parts, 'output/chtml', 'output/svg', 'a11y/assistive-mml'] },
  startup: { typeset: false },
});
const { startup, config } = MathJax ?? globalThis.MathJax;
const documents = new Map();
for (const output of ['chtml', 'svg']) {
  config.startup.output = output;
  startup.getComponents();
  documents.set(output, startup.document);
}
const results = [];
for (const { tex, display, output, assistive } of jobs) {
  const document = documents.get(output);
  document.options.enableAssistiveMml = assistive;
  try {
    const node = await (document.convertPromise ?? document.convert).call(document, tex, { display });
    results.push(startup.adaptor.outerHTML(node));
  } catch {
    results.push(null);
  }
}
process.stdout.write(JSON.stringify(results));
