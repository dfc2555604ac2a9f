// Typesets formulas with the published MathJax 4, in a process of its own: it looks for a browser around it, and a
// test's simulated page would mislead it. In: JSON [{ tex, display, output: "chtml" | "svg", assistive }]; out: JSON
// list of markup.
import MathJax from 'mathjax';

const jobs = JSON.parse(process.argv[2]);
await MathJax.init({
  loader: { load: ['input/tex', 'output/chtml', 'output/svg', 'a11y/assistive-mml', 'adaptors/liteDOM'] },
  startup: { typeset: false },
});
const { startup } = MathJax;
const documents = new Map();
for (const output of ['chtml', 'svg']) {
  MathJax.config.startup.output = output;
  startup.getComponents();
  documents.set(output, startup.document);
}
const results = [];
for (const { tex, display, output, assistive } of jobs) {
  const document = documents.get(output);
  document.options.enableAssistiveMml = assistive;
  results.push(startup.adaptor.outerHTML(await document.convertPromise(tex, { display })));
}
process.stdout.write(JSON.stringify(results));
