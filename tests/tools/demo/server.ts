import { readFile } from 'node:fs/promises';
import { type IncomingMessage, type ServerResponse, createServer } from 'node:http';
import type { AddressInfo } from 'node:net';
import { createRequire } from 'node:module';
import { dirname, extname, join, resolve, sep } from 'node:path';
import { fileURLToPath } from 'node:url';
import { parseArgs } from 'node:util';
import { depthTable, orbits, spiral } from './diagrams.ts';
import { plainPage, renderPage, escapeHtml } from './layout.ts';
import { KATEX_URL, MATHJAX_FONT_URL, MATHJAX_URL, texImage } from './maths.ts';
import { lessons } from './pages.ts';
import { tideEquations } from './pages/tide-force.ts';
import { patternPng } from './pattern.ts';
import { siteCss, sites } from './sites.ts';
import type { SiteKey } from './types.ts';
import { captions } from './video.ts';

export interface LearningPages {
  origin: string;
  /** Paths, with their queries, of all requests so far. */
  requests: string[];
  close(): Promise<void>;
}

interface Reply {
  status?: number;
  type: string;
  body: string | Buffer;
}

const types: Record<string, string> = {
  '.css': 'text/css; charset=utf-8',
  '.js': 'text/javascript; charset=utf-8',
  '.json': 'application/json',
  '.woff': 'font/woff',
  '.woff2': 'font/woff2',
  '.ttf': 'font/ttf',
};
const SVG = 'image/svg+xml; charset=utf-8';
const CSS = 'text/css; charset=utf-8';
const html = (body: string, status = 200): Reply => ({ status, type: 'text/html; charset=utf-8', body });

const articles = lessons.map((lesson) => lesson.article);
const siteKeys = Object.keys(sites) as SiteKey[];

const indexPage = (): Reply => {
  const list = siteKeys.map((key) => {
    const items = articles
      .filter((article) => article.site === key)
      .map(({ path, title, markup, lang }) => {
        const language = lang ? ` lang="${lang}"` : '';
        return `<li><a href="${path}"${language}>${escapeHtml(title)}</a> <small>(${markup})</small></li>`;
      });
    return `<h2>${escapeHtml(sites[key].name)}</h2>\n<ul>${items.join('\n')}</ul>`;
  });
  return html(plainPage('Learning pages', list.join('\n')));
};

const notFound = (path: string): Reply =>
  html(plainPage('Page not found', `<p>Nothing is kept at <code>${escapeHtml(path)}</code>.</p>`), 404);

const film = new URL('./assets/orbits.webm', import.meta.url);

const PIXEL = Buffer.from('R0lGODlhAQABAIAAAAAAAP///yH5BAEAAAAALAAAAAABAAEAAAIBRAA7', 'base64');

/** The path as it was meant; one that cannot be decoded names no page and stays as it is. */
const readable = (path: string): string => {
  try {
    return decodeURIComponent(path);
  } catch {
    return path;
  }
};

/** Everything but the lessons themselves, made when it is asked for. */
const extras = (): Map<string, () => Reply | Promise<Reply>> => {
  const made = new Map<string, () => Reply | Promise<Reply>>([
    ['/', indexPage],
    ['/lagoonery/orbits.svg', () => ({ type: SVG, body: orbits() })],
    ['/ebbledore/spiral.svg', () => ({ type: SVG, body: spiral() })],
    ['/lagoonery/depth-table', () => html(plainPage('An 8 s wave', depthTable()))],
    ['/rough-water/beacon.gif', () => ({ type: 'image/gif', body: PIXEL })],
    ['/ebbledore/pattern.png', async () => ({ type: 'image/png', body: await patternPng() })],
    ['/lagoonery/orbits.webm', async () => ({ type: 'video/webm', body: await readFile(film) })],
    ['/lagoonery/orbits.vtt', () => ({ type: 'text/vtt; charset=utf-8', body: captions })],
    ['/rough-water/send', () => html(plainPage('Thank you', '<p>Nothing was kept.</p>'))],
  ]);
  for (const key of siteKeys) {
    made.set(`/${key}/site.css`, () => ({ type: CSS, body: siteCss(key) }));
    const { licence, name } = sites[key];
    if (licence) made.set(`/${key}/licence`, () => html(plainPage(`${name}: licence`, `<p>${licence}</p>`)));
  }
  for (const [i, tex] of tideEquations.entries())
    made.set(`/old-mole/eq/${i}.svg`, async () => ({ type: SVG, body: await texImage(tex) }));
  return made;
};

const require = createRequire(import.meta.url);
const packageFolder = (name: string): string => dirname(require.resolve(`${name}/package.json`));
const shared: [prefix: string, folder: string][] = [
  [`${KATEX_URL}/`, join(packageFolder('katex'), 'dist')],
  [`${MATHJAX_URL}/`, packageFolder('mathjax')],
  [`${MATHJAX_FONT_URL}/`, packageFolder('@mathjax/mathjax-newcm-font')],
];

/** A file of one of the typesetting packages, never from outside its folder. */
const sharedFile = async (path: string): Promise<Reply | undefined> => {
  const match = shared.find(([prefix]) => path.startsWith(prefix));
  if (!match) return undefined;
  const [prefix, folder] = match;
  const file = resolve(folder, path.slice(prefix.length));
  const type = types[extname(file)];
  if (!type || !file.startsWith(folder + sep)) return undefined;
  const body = await readFile(file).catch(() => undefined);
  return body && { type, body };
};

/** Rendered pages are kept, because they do not change while the server runs. */
const rendered = new Map<string, Promise<string>>();
const lessonPage = (path: string): Promise<string> | undefined => {
  const article = articles.find((one) => one.path === path);
  if (!article) return undefined;
  let page = rendered.get(path);
  if (!page) {
    const siblings = articles.filter((other) => other.site === article.site);
    page = renderPage(article, siblings);
    rendered.set(path, page);
  }
  return page;
};

const answer = async (path: string, more: ReturnType<typeof extras>): Promise<Reply> => {
  const lesson = await lessonPage(path);
  if (lesson !== undefined) return html(lesson);
  return (await more.get(path)?.()) ?? (await sharedFile(path)) ?? notFound(path);
};

/** Sends a reply, or the part of it that was asked for: a player leaps about in a video only where that works. */
const sendReply = (
  { status = 200, type, body }: Reply,
  request: IncomingMessage,
  response: ServerResponse,
): void => {
  const bytes = Buffer.from(body);
  const [, first, last] = /^bytes=(\d+)-(\d*)$/.exec(request.headers.range ?? '') ?? [];
  const from = Number(first ?? 0);
  const to = Math.min(bytes.length - 1, last ? Number(last) : Infinity);
  const part = bytes.subarray(from, to + 1);
  const isPart = first !== undefined && part.length > 0;
  response.writeHead(isPart ? 206 : status, {
    'content-type': type,
    'content-length': (isPart ? part : bytes).length,
    'accept-ranges': 'bytes',
    ...(isPart ? { 'content-range': `bytes ${from}-${to}/${bytes.length}` } : {}),
  });
  response.end(request.method === 'HEAD' ? undefined : isPart ? part : bytes);
};

/** Serves the learning pages of the demo course on this machine only. */
export const startLearningPages = async ({ port = 0 } = {}): Promise<LearningPages> => {
  const more = extras();
  const requests: string[] = [];
  const server = createServer((request, response) => {
    const url = request.url ?? '/';
    requests.push(url);
    if (request.method !== 'GET' && request.method !== 'HEAD') {
      response.writeHead(405, { allow: 'GET, HEAD' }).end();
      return;
    }
    const respond = async (): Promise<void> => {
      const path = readable(url.split('?', 1)[0] ?? '/');
      sendReply(await answer(path, more), request, response);
    };
    respond().catch((error: unknown) => {
      if (!response.headersSent) response.writeHead(500, { 'content-type': 'text/plain; charset=utf-8' });
      response.end(String(error));
    });
  });
  await new Promise<void>((ready, fail) => {
    server.once('error', fail);
    server.listen(port, '127.0.0.1', ready);
  });
  const { port: bound } = server.address() as AddressInfo;
  return {
    origin: `http://127.0.0.1:${bound}`,
    requests,
    close: () =>
      new Promise((done, fail) => {
        server.close((error) => (error ? fail(error) : done()));
        server.closeAllConnections();
      }),
  };
};

if (process.argv[1] === fileURLToPath(import.meta.url)) {
  const { values } = parseArgs({ options: { port: { type: 'string', default: '0' } } });
  const { origin } = await startLearningPages({ port: Number(values.port) });
  console.log(origin);
}
