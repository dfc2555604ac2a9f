// @vitest-environment jsdom
import { expect, test } from 'vitest';
import { notesPage } from '#lib/exchange/out/notes-page.ts';
import { type OutRows, sectionsOf } from '#lib/exchange/out/sections.ts';
import { aClip, aCourse, aLine, aQuestion, aTopic } from '../../builders.ts';
import { HOSTILE } from './hostile-rows.ts';
import { aSource } from '../../ui/a-course.ts';
import { WORDS } from './some-words.ts';

const topic = aTopic({ code: '1', title: 'Waves <b>' });
const PNG = 'data:image/png;base64,AAAA';

function pageOf(rows: Partial<OutRows>, pictures = new Map()): { html: string; doc: Document } {
  const all = { course: aCourse(), topics: [topic], lines: [], questions: [], clips: [], sources: [] };
  const sections = sectionsOf({ ...all, ...rows }, { notes: true, questions: true, clips: true });
  const html = notesPage(
    { title: '"Sea" & <sky>', sections, words: WORDS, pictures, language: 'en' },
    document,
  );
  return { html, doc: new DOMParser().parseFromString(html, 'text/html') };
}

/** Every address in a page that a browser would fetch by itself, by attribute, style or refresh. */
function fetched(doc: Document): string[] {
  const attributes = [...doc.querySelectorAll('*')].flatMap((element) =>
    [...element.attributes].filter(
      ({ name }) =>
        /^(src|srcset|data|poster|background|xlink:href|action|formaction|cite|longdesc|ping|style|on\w+)$/.test(
          name,
        ) ||
        (name === 'href' && element.localName !== 'a'),
    ),
  );
  const styles = [...doc.querySelectorAll('style')].flatMap(
    ({ textContent }) => textContent.match(/url\(|@import/g) ?? [],
  );
  return [...attributes.map(({ value }) => value), ...styles].filter((value) => !value.startsWith(PNG));
}

test('lines nest as they are moved in, questions stand with their answers, formulas are MathML', () => {
  const lines = [1, 0, 2, 1, 0].map((depth, order) =>
    aLine({
      topicId: topic.id,
      depth,
      order,
      lead: `L${order}`,
      rest: order === 1 ? '\\(\\frac{a}{b}\\)' : '',
    }),
  );
  const { doc, html } = pageOf({
    lines,
    questions: [aQuestion({ topicId: topic.id, prompt: 'Which?\nAnd why?', marks: 2 })],
  });
  const depthOf = (element: Element) => {
    let depth = -1;
    for (let at = element.closest('ul'); at; at = at.parentElement!.closest('ul')) depth++;
    return depth;
  };
  expect(
    [...doc.querySelectorAll('li:not(.bare) > strong')].map((one) => [one.textContent, depthOf(one)]),
  ).toEqual(lines.map(({ lead, depth }) => [lead, depth]));
  // As it was written, no tag is left open or closed twice: a parser has nothing to mend.
  const tags = (pattern: RegExp) => html.match(pattern)?.length;
  expect([tags(/<li[ >]/g), tags(/<ul>/g)]).toEqual([tags(/<\/li>/g), tags(/<\/ul>/g)]);
  expect(doc.querySelector('li math mfrac')).not.toBeNull();
  expect(doc.querySelector('dt')!.innerHTML).toBe('Which?<br>And why? <small>(2 marks)</small>');
  expect(doc.querySelector('h1')!.textContent).toBe('"Sea" & <sky>');
  expect(doc.querySelector('h2')!.textContent).toBe('1 Waves <b>');
});

test('TeX that does not parse stands as it was typed', () => {
  const { doc } = pageOf({ lines: [aLine({ topicId: topic.id, rest: 'is \\(\\frac{1}{\\) or so' })] });
  const item = doc.querySelector('li')!;
  expect(item.querySelector('math mtext')!.textContent).toBe('\\frac{1}{');
  expect(item.textContent).toContain('or so');
});

test('a clip has its passage and pictures, own words, source, address and licence', () => {
  const [first, second, gone] = [crypto.randomUUID(), crypto.randomUUID(), crypto.randomUUID()];
  const source = aSource({ licence: 'http://127.0.0.1/licence', published: '2021' });
  const picture = { address: PNG, alt: 'Orbits', width: 9, height: 8 };
  const clip = aClip({
    topicIds: [topic.id],
    sourceId: source.id,
    html: '<p>See <img data-picture="0" alt="x">.</p>',
    pictureIds: [first, second, gone],
    ownWords: 'Mine, \\(x\\)',
    unclear: true,
  });
  const { doc } = pageOf(
    { clips: [clip], sources: [source] },
    new Map([first, second].map((id) => [id, picture])),
  );
  expect([...doc.querySelectorAll('img')].map(({ src, alt }) => [src, alt])).toEqual([
    [PNG, 'Orbits'],
    [PNG, 'Orbits'],
  ]);
  const article = doc.querySelector('article')!;
  for (const text of [
    'The picture is gone.',
    'In my own words: Mine, ',
    'Unclear',
    'http://127.0.0.1/waves · Licence',
  ])
    expect(article.textContent).toContain(text);
  expect([...article.querySelectorAll('a')].map(({ href }) => href)).toEqual([
    'http://127.0.0.1/waves#:~:text=Long%20waves%20outrun%20short%20ones',
    'http://127.0.0.1/waves',
    'http://127.0.0.1/licence',
  ]);
  expect(doc.body.textContent).toContain('Clips are for your own study.');
});

test('nothing in it is a script or asks for anything, whatever the deck holds', () => {
  const { doc, html } = pageOf(HOSTILE(topic.id));
  expect(
    doc.querySelectorAll('script, link, iframe, object, embed, form, base, meta[http-equiv=refresh]'),
  ).toHaveLength(0);
  expect(fetched(doc)).toEqual([]);
  expect(doc.querySelector('meta[http-equiv="Content-Security-Policy"]')!.getAttribute('content')).toBe(
    "default-src 'none'; img-src data:; style-src 'unsafe-inline'",
  );
  expect([...doc.querySelectorAll('a')].every(({ href }) => /^https?:/.test(href))).toBe(true);
  // What was hostile is still there to read.
  expect(html).toContain('&lt;script&gt;');
  // The check itself finds what it looks for.
  const bad = new DOMParser().parseFromString(
    '<img src="http://127.0.0.1/x.png"><link href="http://127.0.0.1">',
    'text/html',
  );
  expect(fetched(bad)).toHaveLength(2);
});
