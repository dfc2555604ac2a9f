// @vitest-environment jsdom
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import type { Line } from '#lib/model/item.ts';
import type { Topic } from '#lib/model/topic.ts';
import { parseMarkdown } from '#lib/exchange/markdown/dialect.ts';
import { type NotesReading, readNotes } from '#lib/exchange/markdown/read-notes.ts';
import { notesMarkdown } from '#lib/exchange/markdown/write-notes.ts';
import { sectionsOf } from '#lib/exchange/out/sections.ts';
import { splitTex } from '#lib/notes/split-tex.ts';
import { aClip, aCourse, aLine, aQuestion, aTopic } from '../../builders.ts';
import { WORDS } from '../out/some-words.ts';

const course = aCourse();

function written(topics: Topic[], lines: Line[], title = 'Foundation Oceanography'): string {
  const choice = { notes: true, questions: true, clips: true };
  const rows = { course, topics, lines, questions: [], clips: [], sources: [] };
  return notesMarkdown(
    { title, sections: sectionsOf(rows, choice), words: WORDS, pictures: new Map() },
    document,
  );
}

/** What a text says: its words, and its formulas whatever their delimiters; a line end in TeX is a space. */
function said(text: string): unknown[] {
  const parts: unknown[] = [];
  for (const piece of splitTex(text)) {
    const last = parts.at(-1);
    if (piece.kind === 'maths') parts.push([piece.tex.replace(/\s+/g, ' '), piece.display]);
    else if (typeof last === 'string') parts[parts.length - 1] = last + piece.text;
    else parts.push(piece.text);
  }
  return parts;
}

const told = ({ parts }: NotesReading) =>
  parts.flatMap(({ topicId, lines }) =>
    lines.map(({ lead, rest, depth }) => ({ topicId, lead: said(lead), rest: said(rest), depth })),
  );

const asWritten = (topics: Topic[], lines: Line[]) =>
  topics.flatMap(({ id }) =>
    lines
      .filter(({ topicId }) => topicId === id)
      .map(({ lead, rest, depth }) => ({ topicId: id, lead: said(lead), rest: said(rest), depth })),
  );

/** One topic, one line. */
function comesBack(lead: string, rest: string): void {
  const topic = aTopic();
  const line = aLine({ topicId: topic.id, lead, rest });
  expect(told(readNotes(written([topic], [line]), [topic]))).toEqual(asWritten([topic], [line]));
}

describe('a line comes back as it was', () => {
  test.each([
    ['*stars* and _lines_ and **both**', '* a\n- b\n1. c\n# d\n> e\n+ f'],
    ['# heading', '[link](http://127.0.0.1) ![image](x) [ ] [x]'],
    ['`code` ``more``', '<b>bold</b> <!-- comment --> &amp; &#35; <http://127.0.0.1>'],
    ['back\\slash \\* \\\\ \\', 'at the end \\'],
    ['two\nlines', 'and\n\n\nmore\n  set in\nwith trailing  \nspaces'],
    ['😀 emoji 👩‍🔬', 'שלום עולם \u202babc\u202c \u200f'],
    ['a | b', 'c | d\n--- | ---\ne | f'],
    ['=====', 'text\n-----\ntext\n====='],
    ['— dash', '— dash'],
    ['', 'no lead'],
    ['no rest', ''],
    ['', ''],
    ['', '— a dash'],
    ['costs $5 and $6', 'or \\$7 $'],
    ['\\(c = \\sqrt{g h}\\)', '$a_b * c_d$ and \\[ \\frac{1}{2} \\]'],
    ['\\(5\\)7', '\\(a\\)\\(b\\)\\[c\\]\\[d\\]'],
    ['\\(\\text{costs \\$5}\\)', '\\(x \\$\\$ y\\) and \\[\\$\\$\\]'],
    ['\\[\na\n+ b\n\\]', 'a \\( b, then $x$'],
    ['$\\(\n\\(c = \\sqrt{gh}\\)$', '$a_b$$a_b$ $$x$$'],
    ['$a_b$$$x$$$$ $$x$$', '$a_b$$$x$$' + '\\(c\\)'.repeat(6) + '*'],
    ['\\( \\)', '\\[ \\] $$ $$'],
    ['~~~', '    code\n\tcode'],
    ['[a]: http://127.0.0.1', '[^1] ^ ~~ == :::'],
    ['---', '***'],
    ['+1', '-1 0. 1) 2.'],
    ['x'.repeat(20_000), '*'.repeat(3000)],
    ['http://127.0.0.1/a_b_c', 'www.example.invalid'],
    ['tab\there', 'no-break\u00a0space, zero\u200bwidth, soft\u00adhyphen'],
  ])('%j', (lead, rest) => comesBack(lead, rest));

  test('also where a programme for Markdown would see TeX as broken', () => {
    comesBack('\\(\\frac{1}{\\) broken', '\\(\\unknown{x}\\) % no comment');
  });
});

test('depths come back, those that skip a level too, and topics that are called the same', () => {
  const waves = aTopic({ order: 0, code: '1', title: 'Waves' });
  const first = aTopic({ order: 1, parentId: waves.id, code: '', title: 'Introduction' });
  const tides = aTopic({ order: 2, code: '2', title: 'Tides' });
  const second = aTopic({ order: 3, parentId: tides.id, code: '', title: 'Introduction' });
  const twin = aTopic({ order: 4, parentId: tides.id, code: '', title: 'introduction' });
  const topics = [waves, first, tides, second, twin];
  const lines = [2, 0, 3, 1, 1, 5, 0].map((depth, order) =>
    aLine({ topicId: twin.id, depth, order, lead: `line ${order}`, rest: 'rest' }),
  );
  lines.push(aLine({ topicId: second.id, order: 9, depth: 1 }));
  const text = written(topics, lines, 'Waves');
  expect(told(readNotes(text, topics))).toEqual(asWritten(topics, lines));
});

const TOKENS = (
  '* _ # [ ] ( ) < > ` \\ ! | ~ $ $$ \\( \\) \\[ \\] & ; : — – - + = 1. 1) - + > *** --- ``` ~~~ ' +
  'a b x 5 wave http://a &amp; &#35; <b> <!-- --> 😀 👩‍🔬 é שלום \u202e \u200f \u200b \u00a0 % { } ^ @ . ,'
).split(' ');
const token = fc.oneof(
  { weight: 6, arbitrary: fc.constantFrom(...TOKENS, ' ', ' ', '  ', '\n', '\t') },
  { weight: 1, arbitrary: fc.string({ unit: 'binary', maxLength: 3 }).filter(isWritable) },
  {
    weight: 2,
    arbitrary: fc.constantFrom('\\(c = \\sqrt{gh}\\)', '$a_b$', '\\[\\frac{1}{2}\\]', '$$x$$', '\\(5\\)'),
  },
);
/** What no Markdown can hold, and line ends other than the one that fields give. */
function isWritable(text: string): boolean {
  return !/[\0\r]/.test(text) && text.isWellFormed();
}
const text = fc.array(token, { maxLength: 12 }).map((parts) => parts.join('').trim());

const deck = fc
  .record({
    topics: fc.array(
      fc.record({
        title: fc
          .oneof(fc.constantFrom('Waves', 'Introduction'), text)
          .filter((title) => title.trim() !== ''),
        code: fc.constantFrom('', '1', '1.1', 'A*'),
        under: fc.nat(4),
      }),
      { minLength: 1, maxLength: 5 },
    ),
    lines: fc.array(fc.record({ lead: text, rest: text, depth: fc.nat(5), topic: fc.nat(4) }), {
      minLength: 1,
      maxLength: 8,
    }),
  })
  .map(({ topics, lines }) => {
    const made: Topic[] = [];
    // In reading order: each below one of the topics that the one before it stands in, or at the top.
    for (const [order, { under, ...topic }] of topics.entries()) {
      const way: Topic[] = [];
      for (let at = made.at(-1); at; at = made.find(({ id }) => id === at!.parentId)) way.push(at);
      const parentId = way[under]?.id ?? null;
      made.push(aTopic({ ...topic, order, parentId }));
    }
    return {
      topics: made,
      lines: lines.map(({ topic, ...line }, order) =>
        aLine({ ...line, order, topicId: made[topic % made.length]!.id }),
      ),
    };
  });

test('any notes written as Markdown and read by a CommonMark library are the same notes', () => {
  fc.assert(
    fc.property(deck, ({ topics, lines }) => {
      expect(told(readNotes(written(topics, lines), topics))).toEqual(asWritten(topics, lines));
    }),
    { numRuns: 400 },
  );
});

test('pictures of lines are named by their ids, and their bytes stand at the end', () => {
  const topic = aTopic();
  const id = crypto.randomUUID();
  const gone = crypto.randomUUID();
  const line = aLine({ topicId: topic.id, pictureIds: [id, gone] });
  const picture = { address: 'data:image/png;base64,AAAA', alt: 'An [orbit]', width: 9, height: 9 };
  const sections = sectionsOf(
    { course, topics: [topic], lines: [line], questions: [], clips: [], sources: [] },
    { notes: true, questions: true, clips: true },
  );
  const text = notesMarkdown(
    { title: 'T', sections, words: WORDS, pictures: new Map([[id, picture]]) },
    document,
  );
  expect(text.trimEnd().endsWith(`[${id}]: data:image/png;base64,AAAA`)).toBe(true);
  const [part] = readNotes(text, [topic]).parts;
  expect(part!.lines).toEqual([{ lead: line.lead, rest: line.rest, depth: 0, pictureIds: [id] }]);
});

test('questions and clips beside the lines are not read as lines', () => {
  const topic = aTopic();
  const clip = aClip({ topicIds: [topic.id], html: '<ul><li>a list</li></ul><h2>Heading</h2>' });
  const rows = {
    course,
    topics: [topic],
    lines: [aLine({ topicId: topic.id })],
    questions: [aQuestion({ topicId: topic.id, prompt: '- a list\n- too' })],
    clips: [clip],
    sources: [],
  };
  const sections = sectionsOf(rows, { notes: true, questions: true, clips: true });
  const text = notesMarkdown({ title: 'T', sections, words: WORDS, pictures: new Map() }, document);
  expect(readNotes(text, [topic])).toMatchObject({ parts: [{ lines: [{ lead: 'Deep-water speed' }] }] });
  expect(parseMarkdown(text).children.map(({ type }) => type)).toContain('blockquote');
});
