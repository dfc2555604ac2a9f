import { renderMaths } from './maths.ts';
import { sites } from './sites.ts';
import type { Article } from './types.ts';

export const escapeHtml = (text: string): string =>
  text.replaceAll('&', '&amp;').replaceAll('<', '&lt;').replaceAll('"', '&quot;');

const BY: Record<string, string> = { ar: 'بقلم', ja: '文：' };
const longDate = (iso: string, lang: string): string =>
  new Date(`${iso}T12:00:00Z`).toLocaleDateString(lang, { dateStyle: 'long', timeZone: 'UTC' });

const head = (article: Article, extra: string): string => {
  const site = sites[article.site];
  const meta = (attribute: string, name: string, content: string): string =>
    `<meta ${attribute}="${name}" content="${escapeHtml(content)}">`;
  return [
    '<meta charset="utf-8">',
    '<meta name="viewport" content="width=device-width, initial-scale=1">',
    `<title>${escapeHtml(`${article.title} | ${site.name}`)}</title>`,
    meta('name', 'author', article.author),
    meta('name', 'description', article.lede),
    meta('property', 'og:title', article.title),
    meta('property', 'og:site_name', site.name),
    meta('property', 'og:type', 'article'),
    meta('property', 'article:published_time', `${article.published}T09:00:00Z`),
    site.licence ? `<link rel="license" href="/${article.site}/licence">` : '',
    '<link rel="icon" href="data:,">',
    `<link rel="stylesheet" href="/${article.site}/site.css">`,
    extra,
    article.head ?? '',
  ]
    .filter(Boolean)
    .join('\n');
};

const navigation = (article: Article, siblings: Article[]): string => {
  const items = siblings.map((other) => {
    const current = other.path === article.path ? ' aria-current="page"' : '';
    return `<li><a href="${other.path}"${current}>${escapeHtml(other.title)}</a></li>`;
  });
  return `<nav aria-label="Lessons"><ul><li><a href="/" lang="en">All sites</a></li>${items.join('')}</ul></nav>`;
};

const SEAM = '<!-- beside -->';

/** The whole HTML document of a learning page. */
export const renderPage = async (article: Article, siblings: Article[]): Promise<string> => {
  const site = sites[article.site];
  // One pass over both parts, because the style sheet that comes with the maths must serve both.
  const maths = await renderMaths(article.body() + SEAM + article.aside, article.markup);
  const [body = '', aside = ''] = maths.html.split(SEAM);
  const licence = site.licence
    ? `<p>${escapeHtml(site.licence)} <a rel="license" href="/${article.site}/licence">Licence</a></p>`
    : '<p>All rights kept by the author.</p>';
  const lang = article.lang ?? 'en-GB';
  const direction = article.dir ? ` dir="${article.dir}"` : '';
  return `<!doctype html>
<html lang="${lang}"${direction}>
<head>
${head(article, maths.head)}
</head>
<body>
<header>
<p><strong>${escapeHtml(site.name)}</strong><br>${escapeHtml(site.motto)}</p>
${navigation(article, siblings)}
</header>
<div class="frame">
<main>
<article class="${site.wrap}">
<h1>${escapeHtml(article.title)}</h1>
<p class="byline">${BY[lang] ?? 'By'} <span class="author">${escapeHtml(article.author)}</span>,
<time datetime="${article.published}">${longDate(article.published, lang)}</time></p>
<p class="lede"><em>${escapeHtml(article.lede)}</em></p>
${body}
</article>
</main>
<aside>
${aside}
</aside>
</div>
<footer>
${licence}
</footer>
</body>
</html>
`;
};

/** A page without an article: the index, a licence, a page that was not found. */
export const plainPage = (title: string, body: string): string => `<!doctype html>
<html lang="en-GB">
<head>
<meta charset="utf-8">
<meta name="viewport" content="width=device-width, initial-scale=1">
<title>${escapeHtml(title)}</title>
<link rel="icon" href="data:,">
<style>body{font-family:sans-serif;max-width:50em;margin:2em auto;padding:0 1em;line-height:1.5}</style>
</head>
<body>
<h1>${escapeHtml(title)}</h1>
${body}
</body>
</html>
`;
