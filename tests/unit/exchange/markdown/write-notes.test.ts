// @vitest-environment jsdom
import { expect, test } from 'vitest';
import { parseMarkdown } from '#lib/exchange/markdown/dialect.ts';
import { notesMarkdown } from '#lib/exchange/markdown/write-notes.ts';
import { type OutRows, sectionsOf } from '#lib/exchange/out/sections.ts';
import { aClip, aCourse, aLine, aQuestion, aTopic } from '../../builders.ts';
import { aSource } from '../../ui/a-course.ts';
import { WORDS } from '../out/some-words.ts';

const topic = aTopic({ code: '1', title: 'Waves & tides *' });
const off = aTopic({ code: '2', title: 'Ice', off: true, order: 1 });

function written(rows: Partial<OutRows>, pictures = new Map()): string {
  const all = { course: aCourse(), topics: [topic, off], lines: [], questions: [], clips: [], sources: [] };
  const sections = sectionsOf({ ...all, ...rows }, { notes: true, questions: true, clips: true });
  return notesMarkdown({ title: 'Foundation Oceanography', sections, words: WORDS, pictures }, document);
}

test('a topic with its lines, questions, clips, own words and where they are from', () => {
  const source = aSource({ licence: 'http://127.0.0.1/licence', author: 'A. Nemo', published: '2021-10' });
  const math =
    '<math><semantics><mi>c</mi><annotation encoding="application/x-tex">c_0</annotation></semantics></math>';
  const text = written({
    lines: [
      aLine({ topicId: topic.id, lead: 'Speed', rest: 'is \\(c\\)', order: 0 }),
      aLine({ topicId: topic.id, lead: 'Swell', rest: 'from afar', order: 1, depth: 1 }),
      aLine({ topicId: topic.id, lead: 'Known', order: 2, leftOut: 'known' }),
      aLine({ topicId: off.id, lead: 'Off' }),
    ],
    questions: [aQuestion({ topicId: topic.id, marks: 2, prompt: 'How *fast*?', answer: '$c$' })],
    clips: [
      aClip({
        topicIds: [off.id, topic.id],
        sourceId: source.id,
        html: `<h2>Waves</h2><p>CO<sub>2</sub> and ${math}</p><table><tr><th>a</th><td>b|c</td></tr></table>`,
        ownWords: 'Mine_own',
        unclear: true,
      }),
      aClip({ topicIds: [] }),
    ],
    sources: [source],
  });
  expect(text).toBe(`<!-- Plumbline notes, form 1 -->

# Foundation Oceanography

Notes, saved on 3 March 2026.

Clips are for your own study.

## 1 Waves & tides \\*

- **Speed** is $c$
  - **Swell** from afar

**Question (2 marks):** How \\*fast\\*?

**Answer:** $c$

> ## Waves
>
> CO<sub>2</sub> and $c_0$
>
> | a | b\\|c |
> | - | ---- |

**In my own words:** Mine_own

Unclear

From: [How waves travel](http://127.0.0.1/waves#:~:text=Long%20waves%20outrun%20short%20ones) · A. Nemo · The Lagoonery · October 2021 · <http://127.0.0.1/waves> · [Licence: http://127.0.0.1/licence](http://127.0.0.1/licence) · kept on 2 March 2026

## Without a topic

> Long waves outrun short ones.

From: kept on 2 March 2026
`);
});

test('pictures of a clip stand in their places, those without one below; own notes lead nowhere', () => {
  const [first, second] = [crypto.randomUUID(), crypto.randomUUID()];
  const own = aSource({ kind: 'own', url: `urn:uuid:${crypto.randomUUID()}`, title: '', site: '' });
  const picture = { address: 'data:image/png;base64,AAAA', alt: 'Orbits', width: 9, height: 9 };
  const text = written(
    {
      clips: [
        aClip({
          sourceId: own.id,
          html: '<p>See <img data-picture="0" alt="x"></p>',
          pictureIds: [first, second],
        }),
      ],
      sources: [own],
    },
    new Map([first, second].map((id) => [id, picture])),
  );
  expect(text).toContain(`> See ![Orbits][${first}]\n>\n> ![Orbits][${second}]`);
  expect(text).toContain('From: Own notes, 2 March 2026\n');
  // Nobody else's terms apply to them.
  expect(text).not.toContain(WORDS.studyNote);
  const definitions = parseMarkdown(text).children.filter(({ type }) => type === 'definition');
  expect(definitions).toMatchObject([{ url: picture.address }, { url: picture.address }]);
});

test('every topic between one with content and the top has its heading, and no heading is deeper than six', () => {
  const chain = Array.from({ length: 8 }, (_, i) => aTopic({ order: i, code: '', title: `Level ${i}` }));
  chain.forEach((one, i) => (one.parentId = chain[i - 1]?.id ?? null));
  const text = written({
    topics: [...chain, aTopic({ order: 9 })],
    lines: [aLine({ topicId: chain[7]!.id })],
  });
  expect(text.match(/^#+ .*/gm)).toEqual([
    '# Foundation Oceanography',
    ...chain.map((one, i) => `${'#'.repeat(Math.min(6, i + 2))} ${one.title}`),
  ]);
});
