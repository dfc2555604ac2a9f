import { completeMaths } from '#lib/capture/maths/complete-maths.ts';
import { pictureAt, picturePlaces } from '#lib/capture/pictures/places.ts';
import { cleanPassage, serialise } from '#lib/capture/sanitise.ts';
import type { Line, Question } from '#lib/model/item.ts';
import { splitTex } from '#lib/notes/split-tex.ts';
import { escaped } from '../escaped.ts';
import { PAGE_STYLE } from './notes-page-style.ts';
import type { OutPicture, OutWords } from './out-words.ts';
import { isOthers, provenanceParts } from './provenance-parts.ts';
import { type OutClip, type OutSection, headingOf } from './sections.ts';

export interface NotesPageInput {
  title: string;
  sections: readonly OutSection[];
  words: OutWords;
  /** By id; pictures that are gone are not in it. */
  pictures: ReadonlyMap<string, OutPicture>;
  /** BCP 47 tag of the words. */
  language: string;
}

/** Pictures from within the file, its own style, and nothing else: no script, no request. */
const POLICY = "default-src 'none'; img-src data:; style-src 'unsafe-inline'";

/**
 * Notes, questions and clips as one HTML file that any browser opens by itself: pictures are data URLs, formulas
 * MathML, and a policy in the file bars scripts and requests.
 *
 * @param doc any document of the window that the work is done in
 */
export function notesPage(
  { title, sections, words, pictures, language }: NotesPageInput,
  doc: Document,
): string {
  const hasClips = sections.some(({ clips }) => clips.some(isOthers));
  const tools = { words, pictures, doc };
  return `<!doctype html>
<html lang="${escaped(language)}">
<head>
<meta charset="utf-8">
<meta name="viewport" content="width=device-width">
<meta name="referrer" content="no-referrer">
<meta http-equiv="Content-Security-Policy" content="${POLICY}">
<title>${escaped(title)}</title>
<style>${PAGE_STYLE}</style>
</head>
<body>
<main>
<h1 dir="auto">${escaped(title)}</h1>
<p>${escaped(words.about)}</p>
${hasClips ? `<p>${escaped(words.studyNote)}</p>\n` : ''}${sections.map((one) => sectionHtml(one, tools)).join('\n')}
</main>
</body>
</html>
`;
}

interface Tools {
  words: OutWords;
  pictures: ReadonlyMap<string, OutPicture>;
  doc: Document;
}

function sectionHtml({ topic, level, lines, questions, clips }: OutSection, tools: Tools): string {
  const name = `h${Math.min(level + 1, 6)}`;
  const heading = topic ? said(headingOf(topic)) : escaped(tools.words.untagged);
  return [
    `<${name} dir="auto">${heading}</${name}>`,
    lines.length > 0 ? listHtml(lines, tools) : '',
    questions.length > 0 ? questionsHtml(questions, tools) : '',
    ...clips.map((clip) => clipHtml(clip, tools)),
  ]
    .filter(Boolean)
    .join('\n');
}

/** Lines as nested lists, as deep as they are moved in. */
function listHtml(lines: readonly Line[], tools: Tools): string {
  let html = '';
  let depth = -1;
  for (const line of lines) {
    if (depth >= line.depth) html += '</li>';
    // A level that is skipped is an item with nothing but the next list in it.
    for (; depth < line.depth; depth++) html += depth + 1 < line.depth ? '<ul><li class="bare">' : '<ul>';
    for (; depth > line.depth; depth--) html += '</ul></li>';
    html += `<li dir="auto">${lineHtml(line, tools)}`;
  }
  for (; depth >= 0; depth--) html += '</li></ul>';
  return html;
}

const lineHtml = ({ lead, rest, pictureIds }: Line, tools: Tools): string =>
  [
    [lead && `<strong>${said(lead)}</strong>`, said(rest)].filter(Boolean).join(' '),
    ...pictureIds.map((id) => pictureHtml(id, tools)),
  ].join('');

const questionsHtml = (questions: readonly Question[], { words }: Tools): string =>
  `<dl>${questions
    .map(
      ({ prompt, answer, marks }) =>
        `<dt dir="auto">${said(prompt)} <small>(${escaped(words.marks(marks))})</small></dt><dd dir="auto">${said(answer)}</dd>`,
    )
    .join('\n')}</dl>`;

function clipHtml({ clip, source }: OutClip, tools: Tools): string {
  const { words } = tools;
  const ownWords = clip.ownWords.trim();
  return `<article>
<blockquote dir="auto">${passageHtml(clip.html, clip.pictureIds, tools)}</blockquote>
${ownWords ? `<p class="own" dir="auto"><b>${escaped(words.ownWords)}:</b> ${said(ownWords)}</p>\n` : ''}${
    clip.unclear ? `<p>${escaped(words.unclear)}</p>\n` : ''
  }<p class="from" dir="auto">${escaped(words.from)}: ${fromHtml({ clip, source }, words)}</p>
</article>`;
}

function passageHtml(html: string, ids: readonly string[], tools: Tools): string {
  const fragment = cleanPassage(html, tools.doc);
  const placed = new Set<number>();
  for (const place of picturePlaces(fragment)) {
    const number = pictureAt(place);
    const picture = tools.pictures.get(ids[number] ?? '');
    placed.add(number);
    if (!picture) place.replaceWith(place.alt);
    else {
      place.src = picture.address;
      place.alt = picture.alt;
    }
  }
  const loose = ids.filter((_, number) => !placed.has(number));
  return serialise(fragment) + loose.map((id) => pictureHtml(id, tools)).join('');
}

function pictureHtml(id: string, { pictures, words }: Tools): string {
  const picture = pictures.get(id);
  if (!picture) return `<p class="from">${escaped(words.pictureGone)}</p>`;
  const { address, alt, width, height } = picture;
  return `<img src="${escaped(address)}" alt="${escaped(alt)}" width="${width}" height="${height}">`;
}

/** Where a clip is from, with address and licence. */
const fromHtml = (clip: OutClip, words: OutWords): string =>
  provenanceParts(clip, words)
    .map(({ text, url }) =>
      url === undefined
        ? escaped(text)
        : `<a href="${escaped(url)}" rel="noreferrer noopener">${escaped(text)}</a>`,
    )
    .join(' · ');

/** Something the student wrote: words as they are, TeX as MathML; where it does not parse, the TeX itself. */
const said = (text: string): string =>
  splitTex(text)
    .map((piece) =>
      piece.kind === 'words'
        ? escaped(piece.text).replaceAll('\n', '<br>')
        : formulaHtml(piece.tex, piece.display),
    )
    .join('');

function formulaHtml(tex: string, display: boolean): string {
  const text = escaped(tex);
  const open = display ? '<math display="block">' : '<math>';
  const note = `<annotation encoding="application/x-tex">${text}</annotation>`;
  const html = `${open}<semantics><mtext>${text}</mtext>${note}</semantics></math>`;
  return completeMaths({ text: '', html }).html;
}
