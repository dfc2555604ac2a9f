import { mkdtemp, readFile, rm, writeFile } from 'node:fs/promises';
import { createServer } from 'node:http';
import type { AddressInfo } from 'node:net';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { type ChromiumDriver, driveChromium } from '#tests/tools/chromium-driver.ts';
import { type PageDriver, until } from '#tests/tools/driver.ts';
import { driveFirefox } from '#tests/tools/firefox-driver.ts';

type FirefoxDriver = Awaited<ReturnType<typeof driveFirefox>>;
export type AnyDriver = ChromiumDriver | FirefoxDriver;

/** Both browsers, to run the same tests in. */
export const BROWSERS = [
  ['Chromium', () => driveChromium({ context: { viewport: { width: 1280, height: 900 } } })],
  ['Firefox', () => driveFirefox()],
] as const satisfies [string, () => Promise<AnyDriver>][];

/** A syllabus that the demo PDFs are about. */
export const SYLLABUS =
  '1 Waves\n\t1.1 Dispersion relation of surface waves\n\t1.2 Group velocity\n2 Tides\n\t2.1 Spring tides\n3 Hydrostatics';

/** The address of the reader in the extension, with what follows `#`. */
export const readerUrl = (driver: AnyDriver, hash = ''): string =>
  ('firefox' in driver ? driver.firefox.url('pdf.html') : driver.browser.url('pdf.html')) + hash;

/** Files in a folder of their own, for file dialogs and drops. */
export async function filesOf(contents: Record<string, Buffer>) {
  const folder = await mkdtemp(join(tmpdir(), 'plumbline-pdf-'));
  for (const [name, bytes] of Object.entries(contents)) await writeFile(join(folder, name), bytes);
  return {
    path: (name: string) => join(folder, name),
    remove: () => rm(folder, { recursive: true, force: true }),
  };
}

/** Opens the reader and picks a file in it. */
export async function pickFile(driver: AnyDriver, path: string): Promise<void> {
  // Through an empty page, so that the reader starts afresh.
  await driver.tab.goto('about:blank');
  await driver.tab.goto(readerUrl(driver));
  await until('the reader', () => driver.tab.run(() => document.querySelector('#pdf-file') !== null));
  if ('firefox' in driver) await (await driver.firefox.find('#pdf-file')).type(path);
  else await driver.page.setInputFiles('#pdf-file', path);
}

/** Drops a file on the page: with the browser's own drag in Chromium, with an event that carries it in Firefox. */
export async function dropFile(driver: AnyDriver, path: string, name: string): Promise<void> {
  if ('firefox' in driver) {
    const base64 = (await readFile(path)).toString('base64');
    await driver.tab.run(
      (data, fileName) => {
        const bytes = Uint8Array.from(atob(data), (character) => character.charCodeAt(0));
        const transfer = new DataTransfer();
        transfer.items.add(new File([bytes], fileName));
        for (const type of ['dragover', 'drop'])
          document.body.dispatchEvent(
            new DragEvent(type, { dataTransfer: transfer, bubbles: true, cancelable: true }),
          );
      },
      base64,
      name,
    );
    return;
  }
  const session = await driver.browser.context.newCDPSession(driver.page);
  const data = { items: [], files: [path], dragOperationsMask: 1 };
  for (const type of ['dragEnter', 'dragOver', 'drop'] as const)
    await session.send('Input.dispatchDragEvent', { type, x: 200, y: 200, data });
  await session.detach();
}

/** The pages that are drawn, by number. */
export const drawnPages = (tab: PageDriver): Promise<number[]> =>
  tab.run(() =>
    [...document.querySelectorAll<HTMLElement>('.pdf-page:has(canvas)')].map((page) =>
      Number(page.dataset.page),
    ),
  );

/** How much of a page is dark, as it is drawn; null while it is not. */
export const darkShare = (tab: PageDriver, number: number): Promise<number | null> =>
  tab.run((page) => {
    const canvas = document.querySelector<HTMLCanvasElement>(`[data-page="${page}"] canvas`);
    if (!canvas) return null;
    const { data } = canvas.getContext('2d')!.getImageData(0, 0, canvas.width, canvas.height);
    let count = 0;
    for (let i = 0; i < data.length; i += 4) if (data[i]! < 100) count++;
    return count / (data.length / 4);
  }, number);

export interface Point {
  x: number;
  y: number;
}

/** Drags the mouse along points of the window. */
export async function drag(driver: AnyDriver, [first, ...rest]: [Point, ...Point[]]): Promise<void> {
  if ('firefox' in driver) {
    const move = ({ x, y }: Point) => ({
      type: 'pointerMove',
      x: Math.round(x),
      y: Math.round(y),
      origin: 'viewport',
      duration: 50,
    });
    await driver.firefox.performActions([
      {
        type: 'pointer',
        id: 'mouse',
        parameters: { pointerType: 'mouse' },
        actions: [
          move(first),
          { type: 'pointerDown', button: 0 },
          ...rest.map(move),
          { type: 'pointerUp', button: 0 },
        ],
      },
    ]);
    return;
  }
  await driver.page.mouse.move(first.x, first.y);
  await driver.page.mouse.down();
  for (const { x, y } of rest) await driver.page.mouse.move(x, y, { steps: 5 });
  await driver.page.mouse.up();
}

/** Clicks one of the reader's tools; they are always in sight. */
export async function clickTool(driver: AnyDriver, name: string): Promise<void> {
  const { x, y } = await until(`the tool “${name}”`, () =>
    driver.tab.run((wanted) => {
      const found = [...document.querySelectorAll<HTMLButtonElement>('.pdf-tools button')].find(
        (one) => (one.getAttribute('aria-label') ?? one.textContent) === wanted,
      );
      if (!found || found.disabled) return null;
      const box = found.getBoundingClientRect();
      return { x: box.x + box.width / 2, y: box.y + box.height / 2 };
    }, name),
  );
  await driver.tab.clickAt(x, y);
}

/** Goes to a page by its number. */
export async function goToPage(driver: AnyDriver, number: number): Promise<void> {
  await until('the page field', () =>
    driver.tab.run(() => {
      const field = document.querySelector<HTMLInputElement>('#pdf-page-number');
      field?.focus();
      return field !== null;
    }),
  );
  await driver.tab.type(String(number));
  await driver.tab.press('Enter');
}

/** Where a run of text stands in the window, scrolled into view: its first and its last letter. */
export function lineAt(tab: PageDriver, text: string): Promise<{ start: Point; end: Point }> {
  return until(`the line “${text}”`, () =>
    tab.run((wanted) => {
      const span = [...document.querySelectorAll('.pdf-text span')].find((one) =>
        one.textContent.includes(wanted),
      );
      if (!span || !document.querySelector('.pdf-picture canvas')) return null;
      const { bottom } = span.getBoundingClientRect();
      if (bottom > innerHeight - 20 || bottom < 80) span.scrollIntoView({ block: 'center' });
      const { left, right, top, height } = span.getBoundingClientRect();
      return { start: { x: left + 0.5, y: top + height / 2 }, end: { x: right - 0.5, y: top + height / 2 } };
    }, text),
  );
}

/** What a student sees of the slip beside the PDF. */
export interface PdfSlipLook {
  text: string;
  preview: string;
  pictures: { width: number; height: number }[];
  focus: string;
}

/** Looks at the slip; null while none is open or it is still empty. */
export const lookAtPdfSlip = (tab: PageDriver): Promise<PdfSlipLook | null> =>
  tab.run(() => {
    const slip = document.querySelector<HTMLElement>('.pdf-slip');
    if (!slip?.childElementCount) return null;
    const preview = slip.querySelector('.preview');
    return {
      text: slip.innerText,
      preview: preview?.innerHTML.replace(/src="[^"]*"/, 'src') ?? '',
      pictures: [...(preview?.querySelectorAll('img') ?? [])].map(({ naturalWidth, naturalHeight }) => ({
        width: naturalWidth,
        height: naturalHeight,
      })),
      focus: document.activeElement?.id || document.activeElement?.localName || '',
    };
  });

/** Waits for the slip to look like this. */
export const seesSlip = (tab: PageDriver, isReady: (look: PdfSlipLook) => boolean): Promise<PdfSlipLook> =>
  until('the slip', async () => {
    const look = await lookAtPdfSlip(tab);
    return look && isReady(look) && look;
  });

/** Waits until the slip is ready to be written on. */
export const openedSlip = (tab: PageDriver): Promise<PdfSlipLook> =>
  seesSlip(tab, ({ focus }) => focus === 'own-words');

/** All rows of a store of the deck, read in a page of the extension. */
export const rowsOf = <T>(tab: PageDriver, store: string): Promise<T[]> =>
  tab.run(async (name) => {
    const request = indexedDB.open('plumbline');
    const db = await new Promise<IDBDatabase>((done) => (request.onsuccess = () => done(request.result)));
    const all = db.transaction(name).objectStore(name).getAll();
    const rows = await new Promise<unknown[]>((done) => (all.onsuccess = () => done(all.result)));
    db.close();
    // Bytes do not travel to the test.
    return JSON.parse(JSON.stringify(rows)) as T[];
  }, store);

/** Serves one PDF on this machine and counts how often it is asked for. */
export async function servePdf(bytes: Buffer) {
  const requests: string[] = [];
  const server = createServer((request, response) => {
    requests.push(request.url ?? '');
    const isPdf = request.url?.includes('waves') ?? false;
    response.writeHead(isPdf ? 200 : 404, {
      'content-type': isPdf ? 'application/pdf' : 'text/plain',
      'cache-control': request.url?.includes('fresh') ? 'no-store' : 'max-age=600',
    });
    response.end(isPdf ? bytes : undefined);
  });
  await new Promise<void>((ready) => server.listen(0, '127.0.0.1', ready));
  return {
    origin: `http://127.0.0.1:${(server.address() as AddressInfo).port}`,
    /** How often the PDF at this path was asked for. */
    asked: (path: string) => requests.filter((url) => url === path).length,
    close: () =>
      new Promise<void>((closed) => {
        server.close(() => closed());
        server.closeAllConnections();
      }),
  };
}
